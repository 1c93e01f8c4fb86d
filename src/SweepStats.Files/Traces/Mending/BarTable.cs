using System.Buffers;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Tables drawn with bars: <c>30 | -73.09</c> or <c>| 30 | -73.09 |</c>, with ruled lines such as <c>-----+-----</c> between
/// header and rows.
/// </summary>
internal static class BarTable
{
    private const int LinesLookedAt = 16;
    private const byte Bar = (byte)'|';

    private static readonly SearchValues<byte> Ruling = SearchValues.Create("-+|=: \t"u8);

    /// <summary>
    /// The text with semicolons (tabs, where rows hold semicolons) in place of bars and without ruled lines; null where rows are
    /// not parted by bars.
    /// </summary>
    public static MendedText? Mend(TraceText text)
    {
        if (RowIn(text) is not { } sample)
        {
            return null;
        }

        ReadOnlySpan<byte> row = text.Line(sample).Trim(" \t"u8);
        (bool before, bool behind) = (row[0] == Bar, row[^1] == Bar);
        int bars = row.Count(Bar);
        byte mark = row.Contains((byte)';') ? (byte)'\t' : (byte)';';
        var buffer = new LineBuffer(text, text.LineCount * 16);
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> bare = text.Line(i).Trim(" \t"u8);
            if (IsRule(bare))
            {
                buffer.EndLine();
            }
            else if (bare.Count(Bar) != bars)
            {
                buffer.Line(text.Line(i));
            }
            else
            {
                Write(buffer, Inside(bare, before, behind), mark);
                buffer.EndLine();
            }
        }

        return new MendedText(buffer.Finish(true), "");
    }

    private static ReadOnlySpan<byte> Inside(ReadOnlySpan<byte> row, bool before, bool behind) =>
        row[(before && row[0] == Bar ? 1 : 0)..(behind && row[^1] == Bar ? ^1 : ^0)];

    private static void Write(LineBuffer buffer, ReadOnlySpan<byte> line, byte mark)
    {
        while (line.IndexOf(Bar) is >= 0 and var at)
        {
            buffer.Write(line[..at]);
            buffer.Write([mark]);
            line = line[(at + 1)..];
        }

        buffer.Write(line);
    }

    // A line with digits and bars, where all lines looked at in the second half are such: "|S21|" above the rows parts none.
    private static int? RowIn(TraceText text)
    {
        int half = text.LineCount / 2;
        int step = Math.Max(1, (text.LineCount - half) / LinesLookedAt);
        int? sample = null;
        for (int i = half; i < text.LineCount; i += step)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (line.IsEmpty || IsRule(line))
            {
                continue;
            }

            if (line.IndexOf(Bar) < 0)
            {
                return null;
            }

            sample ??= line.Length > 2 && line.IndexOfAnyInRange((byte)'0', (byte)'9') >= 0 ? i : null;
        }

        return sample;
    }

    private static bool IsRule(ReadOnlySpan<byte> line) =>
        line.Length >= 3 && line.IndexOfAnyExcept(Ruling) < 0 && line.IndexOfAny("-="u8) >= 0;
}
