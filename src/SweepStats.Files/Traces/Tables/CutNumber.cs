using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Recognises a file that ends amid its last number: no line end, and fewer decimals than every other row has, or than the
/// numbers before it where a row holds a whole sweep.
/// </summary>
/// <remarks>A level of −60.25 dBm that was cut to −6 would be read as a level: nothing else in the file tells.</remarks>
internal static class CutNumber
{
    private const int FewestRows = 4;

    // What stands farther ahead in a row may be of another kind: a date, a span, a count.
    private const int MostBefore = 16;

    /// <summary>Whether the last number of the file may be cut off.</summary>
    public static bool Ends(TraceText text, DataBlock block, Separator separator)
    {
        if (text.EndsWithLine || block.Run.Rows < FewestRows || block.LastLine != text.LineCount - 1)
        {
            return false;
        }

        int last = Decimals(text.Line(block.LastLine), separator);
        int fewest = int.MaxValue;
        for (int line = block.FirstLine; line < block.LastLine && fewest > last; line++)
        {
            if (!NumericRows.IsBlankOrComment(text.Line(line)))
            {
                fewest = Math.Min(fewest, Decimals(text.Line(line), separator));
            }
        }

        return last < fewest;
    }

    /// <summary>The fault of such a file.</summary>
    /// <param name="index">Place of its last line.</param>
    /// <param name="faults">Takes it.</param>
    public static void Refuse(int index, FaultList faults) => faults.Add(index + 1,
        "the file ends without a line end and its last number has fewer decimals than all others: it may be cut off",
        "export the sweep again; if the number is whole, end the line");

    /// <summary>Refuses such a file whose last row holds a whole sweep.</summary>
    /// <param name="text">The file.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public static void RefuseRow(TraceText text, FaultList faults)
    {
        if (!text.EndsWithLine && text.LineCount > 0 && EndsShort(text.Line(text.LineCount - 1)))
        {
            Refuse(text.LineCount - 1, faults);
        }
    }

    private static bool EndsShort(ReadOnlySpan<byte> row)
    {
        var separator = new Separator(MarkOf(row), (byte)(MarkOf(row) == (byte)',' || row.IndexOf((byte)'.') >= 0 ? '.' : ','));
        int last = Decimals(row, separator), before = 0;
        for (int end = row.LastIndexOf(separator.Mark); end > 0 && before < MostBefore; end = row.LastIndexOf(separator.Mark))
        {
            row = row[..end];
            if (Decimals(row, separator) <= last)
            {
                break;
            }

            before++;
        }

        return before >= FewestRows;
    }

    private static byte MarkOf(ReadOnlySpan<byte> row)
    {
        foreach (byte mark in ";\t,"u8)
        {
            if (row.IndexOf(mark) >= 0)
            {
                return mark;
            }
        }

        return (byte)' ';
    }

    private static int Decimals(ReadOnlySpan<byte> line, Separator separator)
    {
        ReadOnlySpan<byte> field = line.TrimEnd(" \t"u8);
        field = field[(field.LastIndexOfAny(separator.Mark, (byte)' ', (byte)'\t') + 1)..];
        int mark = field.IndexOf(separator.DecimalMark);
        return mark < 0 ? 0 : field.Length - mark - 1;
    }
}
