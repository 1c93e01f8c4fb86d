using SweepStats.Lots;
using SweepStats.Report.Answer;
using SweepStats.Report.Choice;
using SweepStats.Report.Lots;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.History;

/// <summary>Lots of several campaigns.</summary>
public static class HistoryWords
{
    /// <summary>
    /// How the lots of several campaigns compare: the answer, how far each campaign can be trusted, the pairs, the named bands,
    /// the lots, what lies out of control.
    /// </summary>
    /// <param name="history">The comparison.</param>
    /// <param name="campaigns">What the analysis of each campaign found, in their order.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> LotHistoryText(LotHistory history, IReadOnlyList<AnalysisResult> campaigns)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(campaigns);
        return
        [
            $"All campaigns together, {Band(history.Band)}, {Count(history.PointCount, "frequency")}",
            .. HistoryAnswerWords.HistoryAnswer(history, campaigns), .. HistoryTrust(history, campaigns),
            .. history.Pairs.IsEmpty ? [] : TextTable.Of(PairColumns(history),
                PairsAsked(history).Select(p => PairRow(p, history))),
            .. history.Bands.IsEmpty ? [] : TextTable.Of(HistoryBandWords.HistoryBandColumns(history),
                HistoryBandWords.HistoryBandRows(history)),
            .. HistoryBandWords.HistoryBandRemarks(history).Select(remark => "  " + remark), HistoryPart(history),
            .. TextTable.Of(HistoryColumns(history), history.Lots.Select(HistoryRow)),
            .. HistoryRemarks(history).Select(remark => "  " + remark),
        ];
    }

    internal static string HistoryPart(LotHistory history) => history.ClearShare switch
    {
        0 => "At every compared frequency some specimen of some campaign is known from below only, so no mean over the band "
            + "can be had.",
        >= 1 - 1e-9 => "Every specimen of every campaign is bounded from both sides at every compared frequency.",
        var share =>
            $"Means are of the {Percent(share)} of this band where every specimen of every campaign is bounded from both sides.",
    };

    /// <summary>Whether each campaign can be trusted: a comparison is no better than what it compares.</summary>
    internal static IEnumerable<string> HistoryTrust(LotHistory history, IReadOnlyList<AnalysisResult> campaigns) =>
        history.Campaigns.Zip(campaigns,
            (label, found) => $"{PlainText.Short(label, LongestSpecimen)}: {VerdictWords.Headline(found)}");

    /// <summary>The same with the reason, and what the campaign says of its own lots.</summary>
    internal static IEnumerable<string> HistoryCampaigns(LotHistory history, IReadOnlyList<AnalysisResult> campaigns) =>
        history.Campaigns.Zip(campaigns, (label, found) =>
            $"{PlainText.Of(label)}: {VerdictWords.Headline(found)} {VerdictWords.TrustReason(found)} Its own lots: "
                + $"{string.Join(" ", LotAnswerWords.LotsAnswer(found))}");

    internal static string[] HistoryColumns(LotHistory history) => ["Campaign", .. LotWords.LotColumns(history.Question)];

    internal static IReadOnlyList<string> HistoryRow(HistoryLot lot) =>
        [PlainText.Short(lot.Campaign, LongestSpecimen), .. LotWords.LotRow(lot.Figures)];

    internal const string PairsCaption =
        "Lots of the same name between campaigns, first less second; all pairs of different campaigns where no name comes twice";

    internal static readonly string[] PairTexts = ["First", "Second"];

    internal static string[] PairFigures(LotHistory history) =>
        ["Difference of the means", $"Its {Level(history.Question.Confidence)} interval", "Probability if alike"];

    internal static string[] PairColumns(LotHistory history) =>
        [.. PairTexts, .. PairFigures(history), "Frequencies that differ"];

    /// <summary>
    /// Lots of the same name in different campaigns; all pairs of different campaigns where no name comes twice.
    /// </summary>
    internal static IEnumerable<HistoryPair> PairsAsked(LotHistory history) => PairsOf(history.Pairs);

    internal static IReadOnlyList<string> PairRow(HistoryPair pair, LotHistory history) =>
        [HistoryAnswerWords.Named(pair.First), HistoryAnswerWords.Named(pair.Second), .. PairCells(pair, history),
            HistoryAnswerWords.Frequencies(pair, history)];

    internal static IEnumerable<string> HistoryRemarks(LotHistory history)
    {
        // Lots that differ in a stretch may be alike in the mean: that they are the same is not what a reader is to take home.
        HistoryPair[] open =
            [.. history.Pairs.Where(
                p => !(history.Differ(p) && LotRemarkWords.Decided(p.Tested, history.Question) == LotRemarkWords.Same))];
        NamedEquivalence Named(HistoryPair pair) =>
            new(LotRemarkWords.Pair(HistoryAnswerWords.Named(pair.First), HistoryAnswerWords.Named(pair.Second)), pair.Tested);
        if (LotRemarkWords.SameWithin([.. open.Select(Named)], history.Question) is { } same)
        {
            yield return same;
        }

        foreach (ControlChart chart in history.OverTime)
        {
            yield return Control(chart);
        }

        if (!history.OverTime.IsEmpty)
        {
            yield return "Control limits are of the scatter of specimens: a new reference moves all lots of a campaign together "
                + "and is not in them. With few points they are rough.";
        }

        yield return "Between campaigns the errors of both references and floors and what both state are part of a comparison "
            + "of two lots; within one they drop out. "
            + "What setting up anew adds is in it only as far as it is stated.";
        yield return "A probability if alike asks the mean over the band, single frequencies and named bands, and allows for "
            + "all of these and for the number of pairs. "
            + "At single frequencies no scatter is taken for smaller than in the neighbourhood: few repeats meet by chance here "
            + "and there.";
    }

    internal const string HistoryKind = "Lots compared";

    internal static string HistoryScope(LotHistory history, int campaigns) =>
        $"{Band(history.Band)}, {Count(history.PointCount, "frequency")}; {Count(history.Lots.Length, "lot")} of "
            + $"{Count(campaigns, "campaign")}; intervals at {Level(history.Question.Confidence)}.";

    /// <summary>What a control chart shows, in a sentence.</summary>
    internal static string Control(ControlChart chart)
    {
        string[] outside = [.. chart.Points.Where(p => p.Outside).Select(p => $"{PlainText.Of(p.Label)} ({Ratio(p.Value)})")];
        string found = outside.Length == 0 ? "within the control limits"
            : $"outside the control limits: {string.Join(", ", outside.Take(MostSpecimensNamed))}";
        return $"{ControlName(chart.Figure)} {(LotChartWords.IsTimed(chart) ? "over time" : "in the order listed")}, "
            + $"{Count(chart.Points.Length, "point")}: {found}.";
    }

    internal static string ControlName(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean => "Means of lots",
        ControlFigure.LotDeviation => "Scatter within lots",
        ControlFigure.Specimen => "Single specimens",
        _ => "Steps from specimen to specimen",
    };

    // Of a band as of the whole: pairs stand in the same order.
    internal static IEnumerable<HistoryPair> PairsOf(ImmutableArray<HistoryPair> pairs)
    {
        HistoryPair[] between = [.. pairs.Where(p => !p.IsWithinACampaign)];
        HistoryPair[] named = [.. between.Where(p => p.First.Figures.Lot == p.Second.Figures.Lot)];
        return (named.Length > 0 ? named : between).Take(ChoiceWords.MostRows);
    }

    internal static string[] PairCells(HistoryPair pair, LotHistory history)
    {
        string chance = pair.Adjusted is { } p ? LotAnswerWords.Chance(p) : Nothing;
        return pair.Tested is { } tested
            ? [Ratio(tested.Difference),
                tested.Interval(history.Question.FalseAlarm / 2) is var i ? Interval(i.Low, i.High) : Nothing, chance]
            : ["cannot be told", Nothing, chance];
    }
}
