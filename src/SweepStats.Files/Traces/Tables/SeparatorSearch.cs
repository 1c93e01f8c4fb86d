using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds out how the fields of a file are parted: the way that makes most lines rows of numbers.</summary>
internal static class SeparatorSearch
{
    private const int LinesTried = 48;

    // The first wins where several do as well. Decimal commas between commas are possible only in quotes.
    private static readonly Separator[] Candidates =
    [
        new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
        new((byte)',', (byte)'.'), new((byte)' ', (byte)'.'), new((byte)',', (byte)','), new((byte)' ', (byte)','),
    ];

    /// <summary>
    /// The separator under which most lines from all over the file are rows of two or more numbers; null where none makes any.
    /// </summary>
    public static Separator? Find(TraceText text)
    {
        int step = Math.Max(1, text.LineCount / LinesTried);
        return Find(text, step) ?? (step > 1 ? Find(text, 1) : null);
    }

    private static Separator? Find(TraceText text, int step)
    {
        Separator? best = null;
        int most = 0;
        using var scratch = new PooledList<double>(64);
        foreach (Separator candidate in Candidates)
        {
            int rows = 0;
            var row = new NumericRow(candidate);
            for (int i = 0; i < text.LineCount; i += step)
            {
                rows += row.Read(text.Line(i), scratch) > 0 ? 1 : 0;
                scratch.CutAt(0);
            }

            if (rows > most)
            {
                (best, most) = (candidate, rows);
            }
        }

        return best;
    }
}
