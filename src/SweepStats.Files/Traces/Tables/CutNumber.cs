using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Recognises a file that ends amid its last number: no line end, and fewer decimals than every other row has.</summary>
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

    private static int Decimals(ReadOnlySpan<byte> line, Separator separator)
    {
        ReadOnlySpan<byte> field = line.TrimEnd(" \t"u8);
        field = field[(field.LastIndexOfAny(separator.Mark, (byte)' ', (byte)'\t') + 1)..];
        int mark = field.IndexOf(separator.DecimalMark);
        return mark < 0 ? 0 : field.Length - mark - 1;
    }
}
