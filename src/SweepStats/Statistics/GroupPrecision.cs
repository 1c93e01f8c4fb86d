namespace SweepStats.Statistics;

/// <summary>
/// Repeatability within groups and reproducibility over them, and how each group stands to the others. Immutable.
/// </summary>
/// <remarks>
/// Formulas: s_r² = Σ(n − 1)s²/Σ(n − 1); s_L² from the mean squares, not below 0; s_R² = s_r² + s_L². Mandel's h = (m − m̄)/s(m)
/// over the plain mean of the group means, k = s/s_r; Cochran's C = the largest of the group variances, each times its degrees of
/// freedom, over their sum. Unit of the values; h, k and C without. Source: ISO 5725-2:1994, 7.2 to 7.4 (from memory); for groups
/// of different size 't Lam 2009, as the NIST Dataplot manual gives it. Error: relative 1e-12.
/// </remarks>
public sealed record GroupPrecision
{
    private GroupPrecision()
    {
    }

    /// <summary>Mean, each value with the same weight.</summary>
    public required double Mean { get; init; }

    /// <summary>s_r: standard deviation within a group.</summary>
    public required double Repeatability { get; init; }

    /// <summary>s_L: standard deviation of the groups about each other, with what repeats explain taken out.</summary>
    public required double Between { get; init; }

    /// <summary>s_R: standard deviation of single values of different groups.</summary>
    public double Reproducibility => Math.Sqrt((Repeatability * Repeatability) + (Between * Between));

    /// <summary>Mandel's h of each group.</summary>
    public required ImmutableArray<double> H { get; init; }

    /// <summary>Mandel's k of each group; not a number for a group of one.</summary>
    public required ImmutableArray<double> K { get; init; }

    /// <summary>Cochran's C.</summary>
    public required double Cochran { get; init; }

    /// <summary>The group that C is of.</summary>
    public required int MostScattered { get; init; }

    /// <summary>Compares groups.</summary>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">Numbers differ, one group only, or no group has two values.</exception>
    public static GroupPrecision Of(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        OneWayAnova table = OneWayAnova.Of(values, groups);
        double[][] each = Each(values, groups, table.BetweenDegreesOfFreedom + 1);
        double[] means = [.. each.Select(g => Sample.Mean(g))];
        double[] squares = [.. each.Select((g, i) => Sample.SquaredDeviations(g, means[i]))];
        double repeatability = Math.Sqrt(table.WithinMeanSquare), spread = Sample.StandardDeviation(means),
            centre = Sample.Mean(means);
        int most = Array.IndexOf(squares, squares.Max());
        return new GroupPrecision
        {
            Mean = Sample.Mean(values),
            Repeatability = repeatability,
            Between = Math.Sqrt(table.GroupVariance),
            H = [.. means.Select(m => (m - centre) / spread)],
            K = [.. squares.Select((s, i) => Math.Sqrt(s / (each[i].Length - 1)) / repeatability)],
            Cochran = squares[most] / squares.Sum(),
            MostScattered = most,
        };
    }

    private static double[][] Each(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, int count)
    {
        List<double>[] each = [.. Enumerable.Range(0, count).Select(_ => new List<double>())];
        for (int i = 0; i < values.Length; i++)
        {
            each[groups[i]].Add(values[i]);
        }

        return [.. each.Select(g => g.ToArray())];
    }
}
