namespace SweepStats.Statistics;

/// <summary>Variances of nested groups from mean squares; groups may differ in size.</summary>
/// <remarks>
/// Formula: the sums of squares T(k) − T(k−1), T(k) = Σ n·m² over the groups of a level, are set equal to what is expected of
/// them and solved from the innermost level outwards; a negative solution counts as 0. The standard error of the mean is that of
/// the weighted values under these variances. Assumes independent effects; needs no normal distribution. Source: Searle, Casella
/// and McCulloch 1992, Variance Components, chapter 5 (from memory).
/// </remarks>
public static class NestedAnova
{
    /// <summary>Estimates the variances.</summary>
    /// <param name="values">All values.</param>
    /// <param name="nesting">Their groups.</param>
    /// <exception cref="ArgumentException">Numbers differ, or two variances cannot be told apart.</exception>
    public static NestedComponents Of(ReadOnlySpan<double> values, Nesting nesting)
    {
        ArgumentNullException.ThrowIfNull(nesting);
        nesting.Require(values);
        var reduced = NestedValues.Of(values, nesting);
        return Of(reduced, Variances(reduced, nesting), nesting);
    }

    /// <summary>The variances with the mean under them.</summary>
    internal static NestedComponents Of(NestedValues values, NestedVariances variances, Nesting nesting)
    {
        (double mean, double error) = NestedMean.Of(values, nesting, variances);
        return new NestedComponents
        {
            Variances = [.. variances.Levels],
            Residual = variances.Residual,
            Mean = mean,
            StandardError = error,
        };
    }

    /// <summary>The variances alone.</summary>
    internal static NestedVariances Variances(NestedValues values, Nesting nesting)
    {
        int levels = nesting.LevelCount, count = nesting.ValueCount;
        double[] squares = values.Squares(nesting);
        int Groups(int level) => level < 0 ? 1 : level == levels ? count : nesting.Sizes[level].Length;
        double residual = squares[levels] / (count - Groups(levels - 1));
        var variances = new double[levels];
        for (int level = levels - 1; level >= 0; level--)
        {
            double expected = residual * (Groups(level) - Groups(level - 1));
            for (int deeper = level + 1; deeper < levels; deeper++)
            {
                expected += variances[deeper] * (nesting.Weight(level, deeper) - nesting.Weight(level - 1, deeper));
            }

            variances[level] = Math.Max(0, (squares[level] - expected) / (count - nesting.Weight(level - 1, level)));
        }

        return new NestedVariances(variances, residual);
    }
}
