namespace SweepStats.Files.Traces.Text;

/// <summary>How the fields of a delimited file are parted, and its decimal mark.</summary>
/// <param name="Mark">Comma, semicolon, tab, or blank for runs of blanks and tabs.</param>
/// <param name="DecimalMark">Point or comma.</param>
internal readonly record struct Separator(byte Mark, byte DecimalMark)
{
    // Decimal commas only where the comma cannot part fields and where files really use them.
    private static readonly Separator[] Candidates =
    [
        new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
        new((byte)',', (byte)'.'), new((byte)' ', (byte)'.'),
    ];

    private const int LinesTried = 48;

    /// <summary>The separator under which most rows are two or more numbers, tried on lines from all over the file; null where none makes any.</summary>
    public static Separator? Find(TraceText text)
    {
        int step = Math.Max(1, text.LineCount / LinesTried);
        return Find(text, step) ?? (step > 1 ? Find(text, 1) : null);
    }

    private static Separator? Find(TraceText text, int step)
    {
        Separator? best = null;
        int most = 0;
        foreach (Separator candidate in Candidates)
        {
            int rows = 0;
            for (int i = 0; i < text.LineCount; i += step)
            {
                rows += candidate.IsNumericRow(text.Line(i)) ? 1 : 0;
            }

            if (rows > most)
            {
                (best, most) = (candidate, rows);
            }
        }

        return best;
    }

    private bool IsNumericRow(ReadOnlySpan<byte> line)
    {
        int fields = 0;
        var reader = new FieldReader(line, this);
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            if (!StrictNumber.TryParse(field, DecimalMark, 0, out _))
            {
                // A separator at the end of the row makes an empty last field.
                return field.IsEmpty && fields >= 2 && reader.AtEnd;
            }

            fields++;
        }

        return fields >= 2;
    }
}
