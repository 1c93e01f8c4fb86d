using SweepStats.Lots;

namespace SweepStats.Report;

/// <content>Lots of several campaigns.</content>
public static partial class Wording
{
    /// <summary>How the lots of several campaigns compare: the answer, the figures, the pairs, what lies out of control.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> LotHistoryText(LotHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return
        [
            $"All campaigns together, {Band(history.Band)}, {Count(history.PointCount, "frequency")}", .. HistoryAnswer(history), HistoryPart(history),
            .. TextTable.Of(HistoryColumns(history), history.Lots.Select(HistoryRow)),
            .. history.Pairs.IsEmpty ? [] : TextTable.Of(PairColumns, PairsAsked(history).Select(p => PairRow(p, history))),
            .. HistoryRemarks(history).Select(remark => "  " + remark),
        ];
    }

    internal static string HistoryPart(LotHistory history) => history.ClearShare switch
    {
        0 => "At every compared frequency some specimen of some campaign is known from below only, so no figure of the band can be had.",
        >= 1 - 1e-9 => "Every specimen of every campaign is bounded from both sides at every compared frequency.",
        var share => $"Figures are of the {Percent(share)} of this band where every specimen of every campaign is bounded from both sides.",
    };

    internal static string[] HistoryColumns(LotHistory history) => ["Campaign", .. LotColumns(history.Question)];

    internal static IReadOnlyList<string> HistoryRow(HistoryLot lot) => [PlainText.Short(lot.Campaign, LongestSpecimen), .. LotRow(lot.Figures)];

    internal const string PairsCaption = "Lots of the same name between campaigns, first less second; all pairs where no name comes twice";

    internal static readonly string[] PairColumns = ["First", "Second", "Difference of the means", "Interval", "Probability if alike"];

    /// <summary>Lots of the same name in different campaigns; all pairs of different campaigns where no name comes twice.</summary>
    internal static IEnumerable<HistoryPair> PairsAsked(LotHistory history)
    {
        HistoryPair[] between = [.. history.Pairs.Where(p => p.First.Campaign != p.Second.Campaign)];
        HistoryPair[] named = [.. between.Where(p => p.First.Figures.Lot == p.Second.Figures.Lot)];
        return (named.Length > 0 ? named : between).Take(MostRows);
    }

    internal static IReadOnlyList<string> PairRow(HistoryPair pair, LotHistory history) =>
    [
        Named(pair.First), Named(pair.Second),
        .. pair.Tested is { } tested
            ? [Ratio(tested.Difference), tested.Interval(history.Question.FalseAlarm / 2) is var i ? Interval(i.Low, i.High) : Nothing, pair.Adjusted is { } p ? Chance(p) : Nothing]
            : new[] { "cannot be told", Nothing, Nothing },
    ];

    internal static IEnumerable<string> HistoryRemarks(LotHistory history)
    {
        if (SameWithin([.. history.Pairs.Select(p => (Pair(Named(p.First), Named(p.Second)), p.Tested))], history.Question) is { } same)
        {
            yield return same;
        }

        foreach (ControlChart chart in history.OverTime)
        {
            yield return Control(chart);
        }

        if (!history.OverTime.IsEmpty)
        {
            yield return "Control limits are of the scatter of specimens: a new reference moves all lots of a campaign together and is not in them. With few points they are rough.";
        }

        yield return "Between campaigns the errors of both references and floors and what both state are part of a comparison of two lots; within one they drop out. "
            + "What setting up anew adds is in it only as far as it is stated.";
        yield return "Named bands are compared within a campaign only.";
    }

    internal const string HistoryKind = "Lots compared";

    internal static string HistoryScope(LotHistory history, int campaigns) =>
        $"{Band(history.Band)}, {Count(history.PointCount, "frequency")}; {Count(history.Lots.Length, "lot")} of {Count(campaigns, "campaign")}; intervals at {Level(history.Question.Confidence)}.";

    /// <summary>What a control chart shows, in a sentence.</summary>
    internal static string Control(ControlChart chart)
    {
        string[] outside = [.. chart.Points.Where(p => p.Outside).Select(p => $"{PlainText.Of(p.Label)} ({Ratio(p.Value)})")];
        string found = outside.Length == 0 ? "within the control limits" : $"outside the control limits: {string.Join(", ", outside.Take(MostSpecimensNamed))}";
        return $"{ControlName(chart.Figure)} {(IsTimed(chart) ? "over time" : "in the order listed")}, {Count(chart.Points.Length, "point")}: {found}.";
    }

    internal static string ControlName(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean => "Means of lots",
        ControlFigure.LotDeviation => "Scatter within lots",
        ControlFigure.Specimen => "Single specimens",
        _ => "Steps from specimen to specimen",
    };

    internal static IEnumerable<string> HistoryAnswer(LotHistory history)
    {
        HistoryPair[] known = [.. history.Pairs.Where(p => p.Adjusted is not null)];
        if (known.Length == 0)
        {
            yield return history.ClearShare == 0 ? "Whether the lots differ cannot be told: too much is known from below only."
                : "Whether the lots differ cannot be told: that takes two specimens a lot, and a reference that is swept twice in each campaign.";
            yield break;
        }

        HistoryPair[] differing = [.. known.Where(p => p.Adjusted <= history.Question.FalseAlarm).OrderByDescending(p => Math.Abs(p.Tested!.Difference))];
        yield return differing.Length == 0
            ? $"No difference between the lots shows in the mean over the band ({Chance(known.Min(p => p.Adjusted!.Value))}, for {Count(known.Length, "pair")} together). That does not prove them alike."
            : $"{(differing.Length == 1 ? "One pair" : Plain(differing.Length))} of {Count(known.Length, "pair")} of lots {(differing.Length == 1 ? "differs" : "differ")} in the mean over the band ({Chance(differing.Min(p => p.Adjusted!.Value))}).";
        foreach (HistoryPair pair in differing.Take(MostStretches))
        {
            yield return $"{Named(pair.First)} shields about {Apart(pair.Tested!.Difference)} than {Named(pair.Second)}.";
        }
    }

    private static string Named(HistoryLot lot) => PlainText.Short(lot.Label, LongestSpecimen);
}
