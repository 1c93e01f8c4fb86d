using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Statistics;

namespace SweepStats.Report.Receivers;

/// <summary>What stands in the chart of margins.</summary>
internal static class MarginChartText
{
    public const string Title = "What receivers show of the shielding";
    public const string Silent = "silent: shielding at least its margin";
    public const string Heard = "still heard: at most its margin";

    public static string Interval(Confidence confidence) =>
        $"together ({Wording.Level(confidence)}; one-sided where one end is open)";

    public static string Claim(Decibels claim) => $"claim: {Wording.Exact(claim.Value, "dB")}";

    public static string Subtitle(ReceiverTest test, int left)
    {
        string more = left > 0 ? $" {Wording.Count(left, "station")} more in receiver.csv." : string.Empty;
        return "Margin: level without the cover less sensitivity; bars are two standard uncertainties to either "
            + $"side.{more}{Unused(test)}";
    }

    public static string NothingClaimed(StationGroup group) => $"{GroupText.Where(group)}: contradiction";

    public static string Figure(RowSpan span) => span switch
    {
        { Low: { } low, High: { } high } => Wording.Interval(low, high),
        { Low: { } low } => Wording.Bound(new Decibels(low)),
        _ => $"≤ {Wording.HighTenths(span.High!.Value)} dB",
    };

    public static string Description(ReceiverTest test) =>
        string.Join(" ", test.Groups.Select(g => GroupText.Headline(g, test.Question)));

    private static string Unused(ReceiverTest test) =>
        test.Observations.Count(o => o.State != EvidenceState.Counts) is > 0 and var unused
        ? $" Not drawn: {Wording.Plain(unused)} without evidence." : string.Empty;
}
