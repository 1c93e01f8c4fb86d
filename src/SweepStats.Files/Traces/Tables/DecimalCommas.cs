using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Tells whether the commas of a file are decimal: <c>30,000</c> alone may be thirty or thirty thousand. One comma that cannot
/// part thousands settles it for the file, and so does any comma in a column in dB, where thousands do not occur.
/// </summary>
internal static class DecimalCommas
{
    /// <summary>
    /// The first line whose comma may part thousands, where nothing in the file settles it; null where all is clear.
    /// </summary>
    public static int? DoubtfulLine(TraceText text, DataBlock block, Separator separator, ChosenColumns columns)
    {
        if (separator.DecimalMark != (byte)',')
        {
            return null;
        }

        int? doubtful = null;
        for (int line = block.FirstLine; line <= block.LastLine; line++)
        {
            var reader = new FieldReader(text.Line(line), separator);
            for (int column = 0; reader.Next(out ReadOnlySpan<byte> field); column++)
            {
                int comma = field.IndexOf((byte)',');
                if (comma < 0)
                {
                    continue;
                }

                if (!MayPartThousands(field, comma) || columns.Levels.Any(l => l.Index == column && l.Unit?.IsLinear() != true))
                {
                    return null;
                }

                doubtful ??= line;
            }
        }

        return doubtful;
    }

    private static bool MayPartThousands(ReadOnlySpan<byte> field, int comma)
    {
        ReadOnlySpan<byte> whole = field[..comma].TrimStart("+-"u8);
        return field.Length - comma == 4 && whole.Length is >= 1 and <= 3 && whole[0] != (byte)'0';
    }
}
