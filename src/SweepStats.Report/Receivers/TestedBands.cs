using SweepStats.Receivers;
using SweepStats.Report.Text;

namespace SweepStats.Report.Receivers;

/// <summary>At which frequencies something is shown, and at which nothing is.</summary>
internal static class TestedBands
{
    // More than these are no longer read in one sentence.
    private const int MostNamed = 4;

    /// <summary>Where a supported claim holds: "at 145 MHz and 433.9 MHz".</summary>
    public static string Where(ReceiverTest test) => test.Groups switch
    {
        [{ Band: null }] => "at the tested frequency",
        { Length: <= MostNamed } few => $"at {Joined([.. few.Select(GroupText.Where)], "and")}",
        var many => $"in each of the {Printed.Plain(many.Length)} tested bands, from {GroupText.Where(many[0])} up to "
            + GroupText.Where(many[^1]),
    };

    /// <summary>What rows that are set aside leave open, with a blank after it; empty where they leave nothing.</summary>
    public static string Unshown(ReceiverTest test) => test.Unshown switch
    {
        [] => string.Empty,
        { Length: <= MostNamed } few => $"Nothing is shown at {Joined([.. few.Select(PrintedFrequency.Frequency)], "and")}. ",
        var many => $"Nothing is shown at {Printed.Plain(many.Length)} other frequencies, from "
            + $"{PrintedFrequency.Frequency(many[0])} to {PrintedFrequency.Frequency(many[^1])}. ",
    };

    /// <summary>What lies above the bounds that are shown; empty where none is.</summary>
    public static string Above(ReceiverTest test)
    {
        StationGroup[] shown = [.. test.Groups.Where(g => g.AtLeast is { Value: > 0 })];
        return shown.Length switch
        {
            0 => string.Empty,
            <= MostNamed => $", and more shielding than {Joined([.. shown.Select(Bound)], "or")}",
            _ => ", and more shielding than the bound of each band",
        };
    }

    private static string Bound(StationGroup group)
    {
        string where = group.Band is { } band ? $" at {PrintedFrequency.Band(band)}" : string.Empty;
        return $"{Printed.LowTenths(group.AtLeast!.Value.Value)} dB{where}";
    }

    private static string Joined(string[] parts, string last) =>
        parts.Length == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} {last} {parts[^1]}";
}
