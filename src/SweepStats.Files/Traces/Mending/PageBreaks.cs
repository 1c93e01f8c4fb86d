using System.Globalization;
using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Takes out what a print puts between the rows of one table: its header again, numbers of pages, remarks, titles of segments.
/// </summary>
internal static class PageBreaks
{
    private const int LongestHeader = 2000;
    private const int MostHeaderLines = 400;
    private const int LongestTitle = 60;

    private static readonly HashSet<string> PageWords =
    [
        "page", "seite", "blatt", "pagina", "página", "pag", "p", "of", "von", "sur", "di", "de", "continued", "cont",
        "fortsetzung", "suite", "continuación", "segment", "segmento", "segmentnr", "range", "subrange", "bereich", "teilbereich",
        "plage", "rango", "band", "bande", "banda", "block", "no", "nr",
    ];

    /// <summary>The text without them; null where there are none.</summary>
    public static MendedText? Mend(TraceText text, RowPattern pattern)
    {
        bool[] passedOver = new bool[text.LineCount];
        var titles = new SegmentTitles();
        Mark(text, pattern, passedOver, titles);
        int count = passedOver.Count(p => p);
        if (count == 0)
        {
            return null;
        }

        var buffer = new LineBuffer(text, text.LineCount * 16);
        for (int i = 0; i < text.LineCount; i++)
        {
            buffer.Line(passedOver[i] ? default : titles.Over(i) is { } whole ? Encoding.UTF8.GetBytes(whole) : text.Line(i));
        }

        int first = Array.IndexOf(passedOver, true);
        string which = count == 1 ? "line " + Number(first)
            : FormattableString.Invariant($"{count} lines, the first of them line {first + 1},");
        return new MendedText(
            buffer.Finish(true), $"{which} {(count == 1 ? "is" : "are")} a repeated header, the number of a page or a segment, "
                + $"or a remark, and {(count == 1 ? "was" : "were")} passed over");
    }

    private static void Mark(TraceText text, RowPattern pattern, bool[] passedOver, SegmentTitles titles)
    {
        HashSet<string>? headers = null;
        List<int> between = [];
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i);
            if (pattern.IsRow(line))
            {
                List<int> found;
                if (headers is null)
                {
                    headers = Headers(text, between);
                    titles.Begin(text, between);
                    found = [.. between.Where(b => IsOpenedByNumber(text.Line(b)))];
                }
                else
                {
                    found = between.TrueForAll(b => IsBreak(text.Line(b), headers, pattern.Mark)) ? between : [];
                    titles.Go(text, found);
                }

                found.ForEach(b => passedOver[b] = true);
                between.Clear();
            }
            else if (!NumericRows.IsBlankOrComment(line))
            {
                between.Add(i);
            }
        }

        between.FindAll(b => IsOpenedByNumber(text.Line(b)) || IsPage(text.Line(b))).ForEach(b => passedOver[b] = true);
    }

    private static HashSet<string> Headers(TraceText text, List<int> above) =>
        [.. above.TakeLast(MostHeaderLines).Where(l => text.Line(l).Length <= LongestHeader)
            .Select(l => text.LineText(l).Trim())];

    // Several fields may be the header of another table, and a remark about a trace or a sweep may tell of another one.
    private static bool IsBreak(ReadOnlySpan<byte> line, HashSet<string> headers, byte mark) =>
        (line.Length <= LongestHeader && headers.Contains(Encoding.UTF8.GetString(line).Trim())) || IsPage(line)
        || (RemarkLine.Is(line) && !RemarkLine.TellsOfTraces(line) && !RemarkLine.TellsOfAChange(line)
            && (RemarkLine.IsOpened(line) || mark == (byte)' ' || !line.Contains(mark)))
        || SegmentTitles.Ends(line) is not null;

    // "12, 3 and 5 were skipped" begins as a row does; beside the rows it would be taken for a broken one.
    private static bool IsOpenedByNumber(ReadOnlySpan<byte> line) =>
        line.TrimStart(" \t\""u8) is [>= (byte)'0' and <= (byte)'9', ..] && RemarkLine.Is(line);

    // "Page 2 of 5", "- 2 -", "Segment 3": words of the list and small numbers.
    private static bool IsPage(ReadOnlySpan<byte> line)
    {
        if (line.Length > LongestTitle)
        {
            return false;
        }

        string[] words = Encoding.UTF8.GetString(line).ToLowerInvariant()
            .Split([' ', '\t', '-', '/', '.', ':', ',', ';', '(', ')', '\f', '|', '='], StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 0 && (words.Any(PageWords.Contains) || line.Trim(" \t\f"u8) is [(byte)'-', .., (byte)'-'])
            && words.All(w => PageWords.Contains(w)
                || (w.Length <= 4 && int.TryParse(w, NumberStyles.None, CultureInfo.InvariantCulture, out _)));
    }

    private static string Number(int line) => (line + 1).ToString(CultureInfo.InvariantCulture);
}
