using SweepStats.Lots;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.History;

/// <summary>Charts of lots of several campaigns.</summary>
internal static class HistoryChartWords
{
    internal const string DifferenceAxis = "Difference in shielding (dB)";
    internal const string DifferenceLegend = "first less second";
    internal const string DifferenceHidden = "left out: known from below only";

    /// <summary>Pairs asked for, those that differ first.</summary>
    internal static IEnumerable<HistoryPair> PairsCharted(LotHistory history, int most) =>
        HistoryWords.PairsAsked(history).OrderBy(p => p.Adjusted ?? 2).Take(most);

    internal static string PairsNotCharted(LotHistory history, int most) =>
        $"Drawn are the {Plain(most)} pairs of {Plain(HistoryWords.PairsAsked(history).Count())} that are least likely alike; "
        + "all frequencies of all pairs are in lots-by-frequency.csv.";

    internal static string DifferenceTitle(HistoryPair pair) =>
        $"{HistoryAnswerWords.Named(pair.First)} less {HistoryAnswerWords.Named(pair.Second)}";

    internal static string DifferenceSubtitle(LotHistory history, HistoryPair pair)
    {
        string compared =
            $"compared at {Plain(pair.Points.Count(p => p.Probability is not null))} of {Count(history.PointCount, "frequency")}";
        return $"means of the lots; above zero the second shields less; {compared}";
    }

    internal static string DifferenceInterval(LotHistory history) =>
        $"{Level(history.Question.Confidence)} interval at each frequency";

    internal static string DifferLegend(LotHistory history) =>
        $"they differ ({Plain(Math.Round(history.Question.FalseAlarm * 100, 3))} %, over all frequencies)";

    internal static string DifferenceDescription(LotHistory history, HistoryPair pair)
    {
        string[] told = history.Differ(pair) ? HistoryAnswerWords.Told(history, pair) : ["No difference shows."];
        int hidden = pair.Points.Count(p => p.Hidden);
        string left = hidden > 0 ? $" Left out, because a specimen is known from below only: {Count(hidden, "frequency")}."
            : string.Empty;
        return $"{DifferenceTitle(pair)} over frequency, with the {Level(history.Question.Confidence)} interval. "
            + $"{string.Join(" ", told)}{left}";
    }
}
