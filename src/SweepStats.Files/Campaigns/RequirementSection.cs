using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [requirement] of campaign.toml: one value, points, or a file of points.</summary>
internal sealed class RequirementSection(string root, FaultList faults)
{
    private static readonly string[] Statements = ["se_db", "points", "file"];

    public Requirement? Requirement { get; private set; }

    public Decibels? Margin { get; private set; }

    /// <summary>One-sided level of "meets" and "fails"; null where it is that of the campaign.</summary>
    public Confidence? Level { get; private set; }

    public Decibels? GuardBand { get; private set; }

    /// <summary>The file of points, where there is one.</summary>
    public InputFile? Input { get; private set; }

    /// <summary>Where the line is stated; null where there is none.</summary>
    public (string File, int? Line)? StatedAt { get; private set; }

    public void Read(KeyReader keys)
    {
        ReadRule(keys);
        ReadLine(keys);
    }

    private void ReadRule(KeyReader keys)
    {
        Margin = keys.Number("margin_db", 0, 100) is { } margin ? new Decibels(margin) : null;
        Level = keys.Number("confidence", 0.5, 0.9999) is { } level ? new Confidence(level) : null;
        GuardBand = keys.Number("guard_band_db", 0, 100) is { } guard ? new Decibels(guard) : null;
    }

    private void ReadLine(KeyReader keys)
    {
        double? constant = keys.Number("se_db", Requirement.LeastDb, Requirement.MostDb);
        ImmutableArray<(double Hertz, double Db)>? points = keys.Pairs("points");
        string? file = keys.Text("file");
        int stated = Statements.Count(keys.Has);
        if (stated > 1)
        {
            keys.Refuse(Statements.Last(keys.Has), "the requirement is stated in more than one way",
                "keep one of se_db, points and file");
        }
        else if (constant is { } se)
        {
            Requirement = Requirement.Constant(new Decibels(se));
        }
        else if (points is { } line)
        {
            int at = keys.LineOf("points");
            Requirement = RequirementLine.Of([.. line.Select(p => new StatedPoint(p.Hertz, p.Db, at))], faults);
            StatedAt = (CampaignFolder.SettingsName, at);
        }
        else if (file is not null)
        {
            FromFile(file, keys);
        }
        else if (stated == 0)
        {
            keys.Require("se_db");
        }
    }

    /// <summary>
    /// A line that asks for nothing in the band that the sweeps share: most often its frequencies were typed in another unit.
    /// </summary>
    public static IEnumerable<ReadFault> Outside(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        if (settings.RequirementAt is not { } place || settings.Plan.Requirement?.Stretch is not { } asked
            || SharedBand.Of(settings, sweeps) is not { } band
            || band.Meets(asked.Start.Value, asked.Stop.Value))
        {
            return [];
        }

        string? power = band.MissingPower(asked.Start.Value, asked.Stop.Value);
        return
        [
            new ReadFault(place.File, place.Line,
                FormattableString.Invariant($"the requirement asks from {asked.Start.Value:R} to {asked.Stop.Value:R} Hz, and ")
                    + FormattableString.Invariant($"the analysed band is {band.Low:R} to {band.High:R} Hz"),
                power is null ? "take the sweeps over the band of the requirement, widen [band], or correct the frequencies (Hz)"
                    : FormattableString.Invariant($"frequencies are in Hz: did you mean {asked.Start.Value:R}{power}?")),
        ];
    }

    private void FromFile(string file, KeyReader keys)
    {
        if (CampaignPath.Absolute(root, file) is { } relative)
        {
            keys.Refuse("file", $"'{file}' is an absolute path", $"write the path relative to campaign.toml: {relative}");
            return;
        }

        string path = Path.GetFullPath(Path.Combine(root, file));
        bool inside = !Path.IsPathRooted(file)
            && path.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
        if (!inside || (File.Exists(path) && !FolderWalk.LiesWithin(root, path)))
        {
            keys.Refuse("file", $"'{file}' leads out of the campaign", "put the limits beside campaign.toml");
            return;
        }

        if (!File.Exists(path))
        {
            keys.Refuse("file", $"the limits file '{file}' is not there", "correct its path, relative to campaign.toml");
            return;
        }

        var own = new FaultList(Path.GetRelativePath(root, path).Replace('\\', '/'));
        (Requirement, string? hash) = RequirementLine.Read(path, own);
        faults.AddRange(own.All);
        StatedAt = (own.File, null);
        Input = hash is null ? null : new InputFile(own.File, hash);
    }
}
