using SweepStats.Choice;
using SweepStats.Report.Answer;
using SweepStats.Report.Drawing;
using SweepStats.Report.Lots;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Choice;

/// <summary>Titles, legends and descriptions of the charts of the choice between specimens.</summary>
internal static class ChoiceChartWords
{
    internal const string ProbabilityHeading = "is the best";
    internal const string NothingKnown = "nothing can be claimed";
    internal const string ChoiceClaimLegend = "at least, at every measured frequency";
    internal const string YardstickLegend = "yardstick, not a candidate";
    internal const string DominatedLegend = "no better than another in anything weighed";
    internal const string NotKnown = "not known";

    private const double Rare = 0.001;

    internal static string ChoiceChartTitle(SpecimenChoice choice, BandRanking band) =>
        ChoiceWords.NoWinner(choice) is not null ? "Mean shielding "
            + $"{(band.Name is { } named ? $"in band {Frame.Name(named)}" : "over the whole band")}; no winner is named"
        : band.Name is { } name ? $"Which specimen is best in band {Frame.Name(name)}"
        : "Which specimen is best over the whole band";

    internal static string ChoiceChartSubtitle(SpecimenChoice choice, BandRanking band, int shown)
    {
        string order = ChoiceWords.NoWinner(choice) is not null ? "the order is no ranking"
            : band.GroupCount == 0 ? "by lower limit of the mean; none can be told from another"
            : "by group, then by lower limit of the mean";
        string held = band.GroupCount > 0 && !choice.ByPlacement ? "; sweeps compared, not placements" : string.Empty;
        return $"{Band(band.Band)}; {order}{held}{LotChartWords.FirstOf(shown, band.Ranking.Length, "specimen")}";
    }

    internal static string GroupHeading(int? group) => group switch
    {
        1 => "Group 1: not to be told from the best",
        { } later => $"Group {Plain(later)}",
        null => "Not compared",
    };

    internal static string YardstickLabel(string name) => $"{Frame.Name(name)} (yardstick)";

    /// <summary>
    /// Probability of being the best: "62 %", "≤ 62 %" or "≥ 62 %" where one side is open; rounded away from the claim.
    /// </summary>
    internal static string BestProbability(RankedSpecimen specimen) => specimen.ProbabilityBest switch
    {
        null or (0, 1) => NotKnown,
        (0, > 0 and var high) => $"≤ {Points(Math.Max(high, Rare), Math.Ceiling)} %",
        ( < 1 and var low, 1) => $"≥ {Points(low, Math.Floor)} %",
        ( < Rare, _) => "< 0.1 %",
        ( > 1 - Rare, _) => "> 99.9 %",
        var (p, _) => $"{Points(p, Math.Round)} %",
    };

    internal static string ChoiceChartDescription(SpecimenChoice choice, BandRanking band, IReadOnlySet<SpecimenName> dominated)
    {
        string best = ChoiceWords.NoWinner(choice) is not null ? " No winner is named."
            : band.GroupCount == 0 || band.Ranking.All(r => r.ProbabilityBest is null) ? string.Empty
            : " Not to be told from the best: "
                + $"{string.Join(", ",
                    band.Ranking.Where(r => r.Group == 1).Select(
                        r => SpecimenLabel(r.Name) + (r.ProbabilityBest is null ? string.Empty
                            : $" (probability of being the best {BestProbability(r)})")))}.";
        string[] worse = [.. band.Ranking.Where(r => dominated.Contains(r.Name)).Select(r => SpecimenLabel(r.Name))];
        string left = worse.Length == 0 ? string.Empty
            : $" No better than another in anything weighed: {string.Join(", ", worse)}.";
        string yardstick = band.Yardstick is { } y ? $" The yardstick {SpecimenLabel(y.Name)}: {VerdictWords.Figure(y.MeanDb)}."
            : string.Empty;
        return $"Mean shielding of {Count(band.Ranking.Length, "specimen")} over {Band(band.Band)}.{best}{left}{yardstick}";
    }

    // A whole percent is enough but for small ones.
    private static string Points(double share, Func<double, double> round)
    {
        double scale = share < 0.0995 || share > 0.9905 ? 1000 : 100;
        return Plain(round(Math.Round(share * scale, 6)) * 100 / scale);
    }
}
