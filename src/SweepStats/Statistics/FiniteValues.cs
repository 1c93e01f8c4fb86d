namespace SweepStats.Statistics;

/// <summary>Refuses what a test statistic would swallow in silence.</summary>
/// <remarks>
/// An order, a count of pairs or a largest deviation comes out as an ordinary number even where a value is none.
/// </remarks>
internal static class FiniteValues
{
    /// <summary>At least <paramref name="count"/> values, every one a finite number.</summary>
    /// <exception cref="ArgumentException">Fewer values, or one that is not finite.</exception>
    public static void Require(ReadOnlySpan<double> values, int count, string name)
    {
        if (values.Length < count)
        {
            throw new ArgumentException($"At least {count} values are needed; there are {values.Length}.", name);
        }

        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw new ArgumentException(FormattableString.Invariant($"Value {i} is not a finite number: {values[i]}."), name);
            }
        }
    }

    /// <summary>Two rows of the same length, at least <paramref name="count"/> finite values in each.</summary>
    /// <exception cref="ArgumentException">Lengths differ, fewer values, or one that is not finite.</exception>
    public static void RequirePairs(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int count)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException($"Each x needs its y: {x.Length} and {y.Length} values.", nameof(y));
        }

        Require(x, count, nameof(x));
        Require(y, count, nameof(y));
    }

    /// <summary>Rows of the same length, at least <paramref name="count"/> finite values in each.</summary>
    /// <exception cref="ArgumentException">Lengths differ, fewer values, or one that is not finite.</exception>
    public static void RequireRows(IReadOnlyList<double[]> rows, int count)
    {
        foreach (double[] row in rows)
        {
            Require(row, count, nameof(rows));
            if (row.Length != rows[0].Length)
            {
                throw new ArgumentException($"Rows are to be of one length: {rows[0].Length} and {row.Length} values.",
                    nameof(rows));
            }
        }
    }

    /// <summary>A chance of a false alarm, between 0 and 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not between 0 and 1.</exception>
    public static void RequireLevel(double level)
    {
        if (!(level > 0 && level < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level,
                "A chance of a false alarm lies between 0 and 1, for example 0.05.");
        }
    }
}
