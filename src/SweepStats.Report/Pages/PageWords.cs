using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Choice;
using SweepStats.Report.Findings;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Pages;

/// <summary>Fixed sentences of the page, and table headers.</summary>
internal static class PageWords
{
    internal const string VerdictHeading = "Why this verdict";
    internal const string Kind = "Shielding report";

    internal const string NoFloorMeans =
        "Without a floor a covered reading may be receiver noise and not signal, so every figure is a lower bound: the true "
        + "shielding may be higher by an unknown "
        + "amount. Take a few sweeps with the source off and the same settings, or declare the floor, and run again.";

    internal static string NoFindings(AnalysisResult result) =>
        $"{(UndecidedWords.RequirementStep(result) is null ? "Nothing has to be done for what the checks looked at: they"
            : "The checks")} found nothing against the measurement. {CheckWords.Untested(
                result)} Keep the raw files with this report.";

    /// <summary>Says that some charts are linked instead of drawn.</summary>
    internal static string ChartsInFiles(int count) =>
        $"{Count(count, "more chart")} in files of their own, to keep this page light:";

    /// <summary>Which charts are not there, and how to have them.</summary>
    internal static string ChartsLeftOut(ChartChoice choice)
    {
        if (choice.Kept.IsEmpty)
        {
            return "No charts were drawn, as asked for. Run the same command again with --charts summary or --charts all: it "
                + "draws them into this folder.";
        }

        int specimens = choice.LeftOut.Where(c => !c.IsOverview).SelectMany(c => c.Of).Distinct().Count();
        int overviews = choice.LeftOut.Count(c => c.IsOverview);
        string lots = overviews == 0 ? string.Empty : $", and {Count(overviews, "chart")} of lots";
        return $"Of single specimens the weakest are drawn: {string.Join(", ", choice.Weakest.Select(SpecimenLabel))}. "
            + $"Left out: the charts of {Count(specimens, "other")}{lots}. Run the same command again with --charts all: it "
            + "draws them into this folder.";
    }

    internal const string NoRangeChart =
        "There is no chart of the dynamic range: without a floor, or with too few repeats, nobody can say how far this set-up "
            + "can see.";

    internal const string BlockedMeans =
        "A shielding in dB says how much less arrives. The same figure looks different as a share of the field strength and as "
        + "a share of the power, so both are "
        + "named: 20 dB block 90 % of the field and 99 % of the power. A mean of decibels has no such share: what passes is "
        + "ruled by the weakest frequencies.";

    internal const string GoodToKnow = "Good to know";

    /// <summary>Where the frequencies stand that a list of stretches does not name.</summary>
    internal const string AllStretches =
        "Where a list of frequencies ends in “more”, the rest is left out here (all in shielding.csv, column flags).";

    internal const string CrowdedArrows =
        "In crowded stretches of the shielding charts not every bound has an arrow; all bounds are in shielding.csv.";

    internal static readonly string[] SettingColumns =
        ["Sweeps", "Resolution bandwidth", "Video bandwidth", "Attenuation", "Detector", "Averaging", "Sweep time"];

    internal static readonly string[] UncertaintyColumns = ["Name", "Half-width", "Spread", "Standard uncertainty", "Acts on"];

    internal static readonly string[] Cautions =
    [
        "These figures are estimates for the measured geometry, set-up and specimens. Another distance, seam, mounting, "
            + "polarisation or room gives other figures.",
        "They are no proof that persons or equipment are protected. Protection is a matter of the whole enclosure, its openings "
            + "and its cables.",
        "Follow local electrical and building codes and the limits for exposure to radio-frequency fields, and work within "
            + "licensed practice.",
        "A transmitter needs a licence for its frequencies and power, or a shielded room that keeps it in.",
    ];

    internal static readonly string[] Sources =
    [
        "Set-up and repeated reference: IEEE Std 299-2006, measuring the effectiveness of shielding enclosures.",
        "Uncertainty, effective degrees of freedom, divisors of the spreads: JCGM 100:2008 (GUM), 4.3 and G.4.1.",
        "Uncertainty budgets held against propagated distributions: JCGM 101:2008, clauses 7 and 8.",
        "Decision against a requirement: JCGM 106:2012.",
        "Limits by recovered variances, for the bend that noise puts into a level near the floor: Zou and Donner, Statistics in "
            + "Medicine 27 (2008), 1693.",
        "Detector noise: power averaged over M looks is a gamma variable of shape M; signal in noise is a noncentral gamma "
            + "variable.",
        "Usable dynamic range: detection limits after Currie, Analytical Chemistry 40 (1968), 586.",
        "A claim over the whole band from the weakest frequency: intersection-union tests, Berger, Technometrics 24 (1982), 295.",
    ];

    internal static string Scope(AnalysisResult result)
    {
        int lots = result.Curves.Select(c => c.Name.Lot).Distinct(StringComparer.Ordinal).Count();
        return $"{Band(result.Campaign.Grid.Band)}, {Count(result.Campaign.Grid.Count, "frequency")}; "
            + $"{Count(result.Curves.Length, "specimen")} of {Count(lots, "lot")}; intervals at {Level(result.Plan.Confidence)}.";
    }

    internal static string CappedOf(BandStatement band, bool floorKnown) =>
        floorKnown ? $"{Plain(band.CappedCount)} of {Plain(band.PointCount)}" : ChoiceChartWords.NotKnown;

    internal static string Repeats(ShieldingCurve? curve, BandStatement band, bool floorKnown)
    {
        string capped =
            (floorKnown ? VerdictWords.Capped(band, curve) : "Which frequencies are capped cannot be told without a floor.")
            + (band.OverloadedCount > 0 ? $" {VerdictWords.Overloaded(band.OverloadedCount, band.PointCount)}" : string.Empty);
        if (curve is null)
        {
            return capped;
        }

        string units = curve.PlacementCount is { } placements
            ? $"{Count(curve.SweepCount, "covered sweep")} in {Count(placements, "placement")}; intervals count "
                + $"{(placements > 1 ? "placements" : "sweeps")}."
            : $"{Count(curve.SweepCount, "covered sweep")}; placements are not noted, so intervals cover the scatter from sweep "
                + "to sweep alone.";
        string within = curve.PlacementCount is null ? string.Empty : " of one placement";
        string scatter = curve.RepeatabilityDb is { } db ? $" Typical scatter between sweeps{within}: {Small(db)}."
            : string.Empty;
        return $"{units}{scatter} {capped}";
    }

    internal static IEnumerable<(string Term, string Meaning)> Guide(AnalysisResult result)
    {
        string level = Level(result.Plan.Confidence);
        yield return ("SE", "Shielding effectiveness: reference level minus covered level in dB, both freed of receiver noise "
            + "where the floor is known. Higher is better; 0 dB is no shielding.");
        yield return ("45.3 dB (44.1 to 46.5 dB)",
            $"An estimate with its {level} interval: of many such intervals about {level} hold the true value. Limits are "
            + "rounded outwards. It covers the scatter "
            + "that the repeats show, the uncertainties that were stated and what the checks allow for. What was not tested is "
            + "not in it.");
        yield return ("≥ 52.3 dB", "A lower bound. The shielding is at least this much; how much more, the measurement cannot "
            + "say. It is not an estimate. From a single sweep "
            + "it allows for noise alone, not for what a repeat would show.");
        yield return ("Capped", "Only a lower bound is known: noise, leakage, a transmitter or the bottom of the display hides "
            + "the rest. In charts it is an arrow.");
        if (result.Bands.Any(b => b.OverloadedCount > 0))
        {
            yield return ("Overloaded", "The receiver showed less of a strong level than there was. Where that is the reference "
                + "the shielding is at least what is printed. "
                + "Where it is the covered level nothing is claimed.");
        }

        yield return ("Near the floor",
            "The covered level lies within 10 dB of the noise, or within 20 dB of leakage. The interval is wider for it.");
        yield return ("One sweep: no interval",
            "Reference or covered was swept once. How far the difference can be trusted is not known; repeat the sweeps.");
        yield return ("What counts as a repeat",
            "Where placements are noted (specimen taken off and put back) and there are two or more, each placement counts "
            + "once: sweeps of one placement only show how steady the receiver is. A copied sweep never counts "
            + "twice.");
        yield return ("Over the whole band", "The lowest of the one-sided lower limits. It holds at every measured frequency of "
            + "the band at once, without further correction.");
    }

    /// <summary>A blocked share with its interval where the figure has one; "≥" where it is a bound.</summary>
    internal static string Blocked(BandFigure figure, Func<Decibels, double> share) => figure switch
    {
        { Value: { } value, Low: { } low, High: { } high } =>
            WithLimits(Printed.Blocked(share(new Decibels(value))), Printed.Blocked(share(new Decibels(low))),
                Printed.Blocked(share(new Decibels(high)), up: true)),
        { Low: { } low } => AtLeast(Printed.Blocked(share(new Decibels(low))), bound: true),
        { Value: { } value } => Printed.Blocked(share(new Decibels(value))),
        _ => Nothing,
    };

    private static string WithLimits(string value, string low, string high) =>
        high == Unblocked ? Unblocked : $"{value} ({low} to {high})";

    private static string AtLeast(string share, bool bound) => bound && share != Unblocked ? "≥ " + share : share;
}
