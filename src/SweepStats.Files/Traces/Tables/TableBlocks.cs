using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds the tables of a file that belong together: traces written one below the other over the same frequencies.
/// </summary>
internal static class TableBlocks
{
    private const int FewestRows = 2;
    private const int FewestInRepeats = 3;

    /// <summary>
    /// Whether two tables hold traces over the same frequencies: the same shape, and a column that rises alike in both.
    /// </summary>
    public static bool AreSiblings(NumericRows rows, NumericRun one, NumericRun other) =>
        one.Columns == other.Columns && one.Rows == other.Rows && one.Rows >= FewestRows
            && Enumerable.Range(0, one.Columns).Any(column => RisesAlike(rows, one, other, column));

    /// <summary>
    /// The sweeps of a table that repeats its frequencies from the first on, again and again; the table itself where it does not.
    /// </summary>
    /// <param name="run">The table.</param>
    /// <param name="axis">Its frequencies.</param>
    public static IReadOnlyList<NumericRun> Repeats(NumericRun run, FrequencyAxis axis)
    {
        ReadOnlySpan<double> hertz = axis.Hertz.AsSpan();
        if (axis.Fall is not { } period || period < FewestInRepeats || run.Rows % period != 0)
        {
            return [run];
        }

        for (int i = period; i < hertz.Length; i++)
        {
            if (hertz[i] != hertz[i - period])
            {
                return [run];
            }
        }

        return [.. Enumerable.Range(0, run.Rows / period).Select(k => run.Part(k * period, period))];
    }

    /// <summary>What the lines above a table call it: the nearest line of words over its header.</summary>
    public static string? Label(TraceText text, int firstLine, int after)
    {
        for (int i = firstLine - 1; i > after; i--)
        {
            string line = text.Line(i).Length <= 200
                ? text.LineText(i).Trim(' ', '\t', '!', '#', '%', ',', ';', '"', '[', ']', ':') : "";
            if (line.Length is > 0 and <= 40 && line.IndexOfAny([',', ';', '\t']) < 0 && line.Any(char.IsLetter)
                && !line.StartsWith("end", StringComparison.OrdinalIgnoreCase))
            {
                return new string([.. line.Where(c => !char.IsControl(c))]);
            }
        }

        return null;
    }

    // Or falls, as frequencies from stop to start do and levels below 0 may.
    private static bool RisesAlike(NumericRows rows, NumericRun one, NumericRun other, int column)
    {
        int sign = Math.Sign(rows.Value(one, 1, column) - rows.Value(one, 0, column));
        for (int row = 0; row < one.Rows; row++)
        {
            double value = rows.Value(one, row, column);
            if (value != rows.Value(other, row, column) || (sign < 0 && value < 0)
                || (row > 0 && (sign == 0 || Math.Sign(value - rows.Value(one, row - 1, column)) != sign)))
            {
                return false;
            }
        }

        return true;
    }
}
