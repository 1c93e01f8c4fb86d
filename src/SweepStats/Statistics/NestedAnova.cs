namespace SweepStats.Statistics;

/// <summary>Variances of nested groups from mean squares; groups may differ in size.</summary>
/// <remarks>
/// Formula: the sums of squares T(k) − T(k−1), T(k) = Σ n·m² over the groups of a level, are set equal to what is expected of them and solved from the
/// innermost level outwards; a negative solution counts as 0. The standard error of the mean is that of the weighted values under these variances.
/// Assumes independent effects; needs no normal distribution. Source: Searle, Casella and McCulloch 1992, Variance Components, chapter 5 (from memory).
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
        (double[] variances, double residual, _) = Variances(values, nesting);
        (double mean, double error) = NestedMean.Of(values, nesting, variances, residual);
        return new NestedComponents { Variances = [.. variances], Residual = residual, Mean = mean, StandardError = error };
    }

    /// <summary>The variances alone.</summary>
    internal static NestedVariances Variances(ReadOnlySpan<double> values, Nesting nesting)
    {
        int levels = nesting.LevelCount;
        NestedSquares found = Squares(values, nesting);
        double[] squares = found.OfLevels;
        int[] counts = [1, .. nesting.Sizes.Select(s => s.Length), values.Length];
        double residual = squares[levels] / (counts[levels + 1] - counts[levels]);
        var variances = new double[levels];
        for (int level = levels - 1; level >= 0; level--)
        {
            double expected = residual * (counts[level + 1] - counts[level]);
            for (int deeper = level + 1; deeper < levels; deeper++)
            {
                expected += variances[deeper] * (Weight(nesting, level, deeper) - Weight(nesting, level - 1, deeper));
            }

            variances[level] = Math.Max(0, (squares[level] - expected) / (values.Length - Weight(nesting, level - 1, level)));
        }

        return new NestedVariances(variances, residual, found);
    }

    /// <summary>Sums of squares of the levels and within the innermost groups.</summary>
    internal static NestedSquares Squares(ReadOnlySpan<double> values, Nesting nesting)
    {
        double centre = Sample.Mean(values);
        int levels = nesting.LevelCount;
        double[] above = [0];
        ReadOnlySpan<int> outer = new int[values.Length];
        var squares = new double[levels + 1];
        for (int level = 0; level < levels; level++)
        {
            ReadOnlySpan<int> groups = nesting.Groups(level);
            double[] means = Means(values, groups, nesting.Sizes[level].AsSpan(), centre);
            var sum = new CompensatedSum();
            for (int i = 0; i < groups.Length; i++)
            {
                double apart = means[groups[i]] - above[outer[i]];
                sum.Add(apart * apart);
            }

            squares[level] = sum.Value;
            above = means;
            outer = groups;
        }

        var within = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            double apart = values[i] - centre - above[outer[i]];
            within.Add(apart * apart);
        }

        squares[levels] = within.Value;
        return new NestedSquares(centre, above, squares);
    }

    private static double[] Means(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, ReadOnlySpan<int> sizes, double centre)
    {
        var means = new double[sizes.Length];
        for (int i = 0; i < values.Length; i++)
        {
            means[groups[i]] += (values[i] - centre) / sizes[groups[i]];
        }

        return means;
    }

    // Σ over the groups of a level, and the groups inside them of a deeper one, of (values in the inner)²/(values in the outer); all values are one group of level −1.
    private static double Weight(Nesting nesting, int level, int deeper)
    {
        double sum = 0;
        for (int group = 0; group < nesting.Sizes[deeper].Length; group++)
        {
            int outer = group;
            for (int up = deeper; up > Math.Max(level, 0); up--)
            {
                outer = nesting.Parent(up, outer);
            }

            double inside = nesting.Sizes[deeper][group];
            sum += inside * inside / (level < 0 ? nesting.ValueCount : nesting.Sizes[level][outer]);
        }

        return sum;
    }
}
