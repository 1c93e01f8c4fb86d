namespace SweepStats.Statistics;

/// <summary>
/// Nested values reduced to what their variances need: the mean of each innermost group, and the scatter within.
/// </summary>
/// <param name="Centre">A number near the values, taken from each of them first: means far from zero would lose digits.</param>
/// <param name="Means">Mean of each innermost group, less the centre.</param>
/// <param name="Within">Sum of the squares of the values about the means of their groups.</param>
internal readonly record struct NestedValues(double Centre, double[] Means, double Within)
{
    /// <summary>Reduces values in the order of the nesting, one for each of its places.</summary>
    public static NestedValues Of(ReadOnlySpan<double> values, Nesting nesting)
    {
        ReadOnlySpan<int> groups = nesting.Groups(nesting.LevelCount - 1);
        double centre = Sample.Mean(values);
        var means = new double[nesting.Sizes[^1].Length];
        for (int i = 0; i < values.Length; i++)
        {
            means[groups[i]] += values[i] - centre;
        }

        for (int g = 0; g < means.Length; g++)
        {
            means[g] /= nesting.Sizes[^1][g];
        }

        var within = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            double apart = values[i] - centre - means[groups[i]];
            within.Add(apart * apart);
        }

        return new NestedValues(centre, means, within.Value);
    }

    /// <summary>
    /// Sums of squares: of each level within the one above, outermost first, and of the values within the innermost groups.
    /// </summary>
    public double[] Squares(Nesting nesting)
    {
        var squares = new double[nesting.LevelCount + 1];
        squares[^1] = Within;
        double[] means = Means;
        for (int level = nesting.LevelCount - 1; level >= 0; level--)
        {
            double[] above = Above(means, nesting, level);
            var sum = new CompensatedSum();
            for (int g = 0; g < means.Length; g++)
            {
                double apart = means[g] - above[Outer(nesting, level, g)];
                sum.Add(nesting.Sizes[level][g] * apart * apart);
            }

            squares[level] = sum.Value;
            means = above;
        }

        return squares;
    }

    // Means of the groups that hold those of a level; above the outermost all values are one group.
    private static double[] Above(double[] means, Nesting nesting, int level)
    {
        var above = new double[level == 0 ? 1 : nesting.Sizes[level - 1].Length];
        for (int g = 0; g < means.Length; g++)
        {
            above[Outer(nesting, level, g)] += nesting.Sizes[level][g] * means[g];
        }

        for (int g = 0; g < above.Length; g++)
        {
            above[g] /= level == 0 ? nesting.ValueCount : nesting.Sizes[level - 1][g];
        }

        return above;
    }

    private static int Outer(Nesting nesting, int level, int group) => level == 0 ? 0 : nesting.Parent(level, group);
}
