using SweepStats.Quantities;
using SweepStats.Uncertainty;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// A section [[uncertainty]] of campaign.toml: a half-width with its distribution, or two reflections whose mismatch it is.
/// </summary>
internal static class UncertaintySection
{
    private const double WidestDb = 100;
    private const string MismatchWord = "mismatch";

    // Each is held against every frequency; a budget of a bench has ten.
    private const int Most = 100;

    private static readonly (string Key, string Word)[] OnlyWith =
        [("k", "normal"), ("dof", "normal"), ("top_half_width_db", "trapezoidal")];

    private static readonly string[] NotWithReflections = ["half_width_db", "k", "dof", "top_half_width_db"];

    /// <summary>The settings with the entry; without it where something is wrong, which is then told.</summary>
    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        if (Entry(keys) is not { } entry)
        {
            return settings;
        }

        ImmutableArray<UncertaintyEntry> earlier = settings.Plan.Uncertainties;
        if (earlier.Any(e => string.Equals(e.Name, entry.Name, StringComparison.OrdinalIgnoreCase)))
        {
            keys.Refuse("name", $"there is another error of the name '{entry.Name}'", "join both, or give each its own name");
        }

        if (earlier.Length == Most)
        {
            keys.Refuse(keys.Line, FormattableString.Invariant($"there are more than {Most} errors"),
                "join those that act alike");
        }

        return settings with
        {
            // One above the most is kept, so that the fault is told once.
            Plan = earlier.Length > Most ? settings.Plan : settings.Plan with { Uncertainties = earlier.Add(entry) },
            Assumptions = keys.Has("acts_on") ? settings.Assumptions : settings.Assumptions.Add(
                $"the error '{entry.Name}' is taken to act on the covered levels alone, since acts_on is left out"),
        };
    }

    private static UncertaintyEntry? Entry(KeyReader keys)
    {
        string? name = keys.Text("name");
        double? halfWidth = keys.Number("half_width_db", 0, WidestDb);
        ErrorDistribution? distribution = DistributionOf(keys);
        double? k = keys.Number("k", 0.1, 10);
        double? dof = keys.Number("dof", 1, 1e6);
        double? top = keys.Number("top_half_width_db", 0, WidestDb);
        Mismatch? mismatch = MismatchOf(keys, ReflectionKeys.Read(keys, "source"), ReflectionKeys.Read(keys, "load"));
        ErrorActsOn actsOn = ActsOn(keys);
        bool common = IsCommon(keys, actsOn);
        if (!ReflectionKeys.Any(keys))
        {
            keys.Require("half_width_db");
            Distribution(keys, distribution, top, halfWidth);
        }

        keys.Require("name");
        double? width = mismatch?.HalfWidthDb ?? halfWidth;
        ErrorDistribution? spread = mismatch is null ? distribution : ErrorDistribution.Arcsine;
        return name is null || width is null || spread is null ? null : new UncertaintyEntry
        {
            Name = name,
            HalfWidthDb = width.Value,
            Distribution = spread.Value,
            CoverageFactor = k ?? 2,
            ActsOn = actsOn,
            Common = common,
            DegreesOfFreedom = dof ?? double.PositiveInfinity,
            TopHalfWidthDb = Math.Min(top ?? 0, width.Value),
            Mismatch = mismatch,
        };
    }

    private static ErrorDistribution? DistributionOf(KeyReader keys) => keys.Choice<ErrorDistribution>(
        "distribution", new("normal", ErrorDistribution.Normal), new("rectangular", ErrorDistribution.Rectangular),
        new("triangular", ErrorDistribution.Triangular), new("trapezoidal", ErrorDistribution.Trapezoidal),
        new("arcsine", ErrorDistribution.Arcsine), new(MismatchWord, ErrorDistribution.Arcsine));

    private static ErrorActsOn ActsOn(KeyReader keys) => keys.Choice<ErrorActsOn>(
        "acts_on", new("reference", ErrorActsOn.Reference), new("covered", ErrorActsOn.Covered),
        new("both", ErrorActsOn.Both)) ?? ErrorActsOn.Covered;

    private static bool IsCommon(KeyReader keys, ErrorActsOn actsOn)
    {
        bool common = keys.Truth("common") ?? false;
        if (common && actsOn != ErrorActsOn.Both)
        {
            keys.Refuse("common", "an error that is common acts on both reference and covered",
                "set acts_on = \"both\", or common = false");
        }

        return common;
    }

    private static void Distribution(KeyReader keys, ErrorDistribution? distribution, double? top, double? half)
    {
        keys.Require("distribution");
        if (IsMismatch(keys))
        {
            keys.Refuse("distribution", "a mismatch is stated without its two reflections",
                "add reflection_source and reflection_load, or set distribution = \"arcsine\" beside half_width_db");
        }

        foreach ((string key, string word) in OnlyWith)
        {
            if (keys.Has(key) && distribution is { } other
                && !string.Equals(other.ToString(), word, StringComparison.OrdinalIgnoreCase))
            {
                keys.Refuse(key, $"{key} goes with a {word} distribution only",
                    $"remove {key}, or set distribution = \"{word}\"");
            }
        }

        if (distribution == ErrorDistribution.Trapezoidal)
        {
            keys.Require("top_half_width_db");
        }

        if (top > half)
        {
            keys.Refuse("top_half_width_db", "the flat top is wider than the whole",
                "set top_half_width_db to at most half_width_db");
        }
    }

    private static Mismatch? MismatchOf(KeyReader keys, Reflection? source, Reflection? load)
    {
        if (!ReflectionKeys.Any(keys))
        {
            return null;
        }

        ReflectionKeys.RequireBoth(keys);
        foreach (string key in NotWithReflections.Where(keys.Has))
        {
            keys.Refuse(key, $"{key} does not go with two reflections, which say how wide the error is",
                $"remove {key}, or the reflections");
        }

        if (keys.Has("distribution") && !IsMismatch(keys))
        {
            keys.Refuse("distribution", "the error of two reflections is a mismatch",
                $"set distribution = \"{MismatchWord}\", or leave it out");
        }

        if (source is not { } from || load is not { } to)
        {
            return null;
        }

        var mismatch = new Mismatch(from, to);
        if (mismatch.HalfWidthDb <= WidestDb)
        {
            return mismatch;
        }

        keys.Refuse(ReflectionKeys.Written(keys, "load"), "both sides reflect everything, so the level may vanish",
            "state the reflections of the set-up as it was measured");
        return null;
    }

    private static bool IsMismatch(KeyReader keys) =>
        string.Equals(keys.Written("distribution"), MismatchWord, StringComparison.OrdinalIgnoreCase);
}
