using System.Globalization;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>The traces of a file as a table in text, one line a trace.</summary>
internal static class TraceTable
{
    /// <summary>Traces that are listed; of more, their number is said.</summary>
    public const int Longest = 20;

    private const int LongestName = 32;
    private const string Between = "  ";

    private static readonly ImmutableArray<string> Head =
        ["trace", "quantity", "unit", "points", "from", "to", "first", "last", "lowest", "highest"];

    // Names and words stand at the left of their column, numbers at the right.
    private const int Words = 3;

    // Levels of a trace that was never written say nothing; the reason takes their place.
    private const int Reading = 6;

    /// <summary>Headings, then a line for each of the first <see cref="Longest"/> traces, each column of one width.</summary>
    public static IEnumerable<string> Of(ImmutableArray<Trace> traces)
    {
        string[][] rows = [[.. Head], .. traces.Take(Longest).Select(Row)];
        int[] widths =
            [.. Head.Select(
                (_, column) => rows.Where(row => row.Length == Head.Length || column < Reading).Max(row => row[column].Length))];
        return rows.Select(
            row => string.Join(Between,
                row.Select((cell, i) => i >= Words && (i < Reading || row.Length == Head.Length) ? cell.PadLeft(widths[i])
                    : cell.PadRight(widths[i]))).TrimEnd());
    }

    /// <summary>The trace's column as it is printed, cut to 32 characters.</summary>
    public static string Name(Trace trace) => PrintedText.Short(trace.Column, LongestName);

    private static string[] Row(Trace trace)
    {
        string[] known =
        [
            Name(trace),
            PrintedText.Short(trace.Quantity, LongestName),
            trace.Unit?.Symbol() ?? "not stated",
            trace.Levels.Length.ToString(CultureInfo.InvariantCulture),
            ReadFrequency.Text(trace.Axis.Hertz[0]),
            ReadFrequency.Text(trace.Axis.Hertz[^1]),
        ];
        return trace.Blank is { } reason ? [.. known, "blank: " + PrintedText.Of(reason)] : [.. known, .. Levels(trace)];
    }

    private static string[] Levels(Trace trace)
    {
        (double Low, double High)? range = LevelText.Range(trace);
        return
        [
            LevelText.Of(trace.Levels[0], trace.Unit),
            LevelText.Of(trace.Levels[^1], trace.Unit),
            range is { } levels ? LevelText.Of(levels.Low, trace.Unit) : "-",
            range is { } same ? LevelText.Of(same.High, trace.Unit) : "-",
        ];
    }
}
