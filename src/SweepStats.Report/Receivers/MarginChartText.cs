using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Report.Text;
using SweepStats.Statistics;

namespace SweepStats.Report.Receivers;

/// <summary>What stands in the chart of margins.</summary>
internal static class MarginChartText
{
    public const string Title = "What receivers show of the shielding";
    public const string Silent = "silent: shielding at least its margin";
    public const string Heard = "still heard: at most its margin";

    /// <summary>Legend of the bars of groups.</summary>
    public static string Interval(Confidence confidence) =>
        $"together ({Printed.Level(confidence)}; one-sided where one end is open)";

    /// <summary>Legend of the line at the shielding that is claimed.</summary>
    public static string Claim(Decibels claim) => $"claim: {Printed.Exact(claim.Value, "dB")}";

    /// <summary>What a margin is, and how many stations are not drawn: for want of room, or as no evidence.</summary>
    public static string Subtitle(ReceiverTest test, int left)
    {
        string more = left > 0 ? $" {Printed.Count(left, "station")} more in receiver.csv." : string.Empty;
        return "Margin: level without the cover less sensitivity; bars are two standard uncertainties to either "
            + $"side.{more}{Unused(test)}";
    }

    /// <summary>Label of a group whose stations contradict each other, so that there is no bar.</summary>
    public static string NothingClaimed(StationGroup group) => $"{GroupText.Where(group)}: contradiction";

    /// <summary>What a group shows in dB: an interval, or the one limit that there is.</summary>
    public static string Figure(RowSpan span) => span switch
    {
        { Low: { } low, High: { } high } => PrintedLevel.Interval(low, high),
        { Low: { } low } => PrintedLevel.Bound(new Decibels(low)),
        _ => $"≤ {Printed.HighTenths(span.High!.Value)} dB",
    };

    /// <summary>The chart for a person who cannot see it: a sentence a group.</summary>
    public static string Description(ReceiverTest test) =>
        string.Join(" ", test.Groups.Select(g => GroupText.Headline(g, test.Question)));

    private static string Unused(ReceiverTest test) =>
        test.Observations.Count(o => o.State != EvidenceState.Counts) is > 0 and var unused
        ? $" Not drawn: {Printed.Plain(unused)} without evidence." : string.Empty;
}
