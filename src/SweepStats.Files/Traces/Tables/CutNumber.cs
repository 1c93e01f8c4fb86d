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
    /// <remarks>Only where all other levels of the row have one number of decimals: some exports leave out zeros.</remarks>
    /// <param name="text">The file.</param>
    /// <param name="separator">How its fields are parted.</param>
    /// <param name="first">Place of the first level in the row, or before it where a name stands there.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public static void RefuseRow(TraceText text, Separator separator, int first, FaultList faults)
    {
        if (text.EndsWithLine || text.LineCount == 0)
        {
            return;
        }

        List<string> fields = FieldReader.Texts(text.Line(text.LineCount - 1), separator);
        int[] decimals = [.. fields.Skip(first).Where(f => f.Any(char.IsAsciiDigit)).Select(f => Decimals(f, separator))];
        bool isEven = decimals.Length > FewestRows && decimals[..^1].Distinct().Count() == 1;
        if (isEven && fields[^1].Length > 0 && decimals[^1] < decimals[0])
        {
            Refuse(text.LineCount - 1, faults);
        }
    }

    private static int Decimals(string number, Separator separator)
    {
        string field = number.TrimEnd();
        int mark = field.IndexOf((char)separator.DecimalMark, StringComparison.Ordinal);
        return mark < 0 ? 0 : field.Length - mark - 1;
    }

    private static int Decimals(ReadOnlySpan<byte> line, Separator separator)
    {
        ReadOnlySpan<byte> field = line.TrimEnd(" \t"u8);
        field = field[(field.LastIndexOfAny(separator.Mark, (byte)' ', (byte)'\t') + 1)..];
        int mark = field.IndexOf(separator.DecimalMark);
        return mark < 0 ? 0 : field.Length - mark - 1;
    }
}
