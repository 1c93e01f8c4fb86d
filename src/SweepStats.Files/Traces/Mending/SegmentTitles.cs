using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Titles of the segments of one sweep that state their ranges: "Range 2: 650 kHz to 1650 kHz". Once the segments are joined, the
/// first title states the range of the whole, so that the rows are still held against it.
/// </summary>
internal sealed class SegmentTitles
{
    private const int Longest = 100;

    private static readonly HashSet<string> Names =
        ["range", "subrange", "segment", "segmento", "band", "bande", "banda", "bereich", "teilbereich", "plage", "rango",
            "block", "part", "teil", "frequenzbereich", "sweep"];

    private int? _line;
    private string _start = "";
    private string? _stop;

    /// <summary>Takes the lines above the first row.</summary>
    public void Begin(TraceText text, IReadOnlyList<int> above)
    {
        foreach (int line in above)
        {
            if (Ends(text.Line(line)) is { } ends)
            {
                (_line, _start, _stop) = (line, ends[0], null);
            }
        }
    }

    /// <summary>Takes the lines between two segments.</summary>
    public void Go(TraceText text, IReadOnlyList<int> between)
    {
        foreach (int line in between)
        {
            _stop = Ends(text.Line(line)) is { } ends ? ends[1] : _stop;
        }
    }

    /// <summary>
    /// What the line of the first title states of the whole; null for every other line, and where there was one segment only.
    /// </summary>
    public string? Over(int line) => line == _line && _stop is { } stop ? $"Range: {_start} to {stop}" : null;

    /// <summary>
    /// First and last frequency of a title; null for any other line. A number behind the word for it tells that there are
    /// several.
    /// </summary>
    public static ImmutableArray<string>? Ends(ReadOnlySpan<byte> line)
    {
        if (line.Length is 0 or > Longest)
        {
            return null;
        }

        string title = Encoding.UTF8.GetString(line).Trim(' ', '\t', '"', ',', ';', '#', '!', '%', '[', ']', '-', '=', '*');
        int at = title.IndexOf(' ', StringComparison.Ordinal);
        if (at < 0 || !Names.Contains(title[..at].ToLowerInvariant()))
        {
            return null;
        }

        string rest = title[at..].TrimStart(' ', '#');
        int digits = rest.AsSpan().IndexOfAnyExceptInRange('0', '9') is >= 0 and var end ? end : rest.Length;
        bool isNumbered = digits is >= 1 and <= 3 && rest.Length > digits && !char.IsLetter(rest[digits]);
        return isNumbered
            ? StatedRange.Ends(WithoutFrom(rest[digits..].Trim(' ', ':', '(', ')', ',', ';', '-', '–', '='))) : null;
    }

    private static string WithoutFrom(string range) =>
        range.StartsWith("from ", StringComparison.OrdinalIgnoreCase)
            || range.StartsWith("von ", StringComparison.OrdinalIgnoreCase)
            ? range[(range.IndexOf(' ', StringComparison.Ordinal) + 1)..] : range;
}
