namespace SweepStats.Statistics;

/// <summary>
/// Whether groups of pairs lie at levels of their own about one straight line, so that the pairs of a group go together.
/// </summary>
/// <remarks>
/// Formula: F of the groups' levels that are added to the line, (SS about the line − SS about parallel lines)/(g − 1) over SS
/// about parallel lines/(n − g − 1).
/// Assumes independent normal scatter of one size within groups. Source: analysis of covariance, Fisher 1932 (from memory).
/// Error: relative 1e-9 of the
/// probability (fixtures/oracles/lack-of-fit.R).
/// </remarks>
internal static class GroupsAboutLine
{
    /// <summary>
    /// Probability of groups so far apart where all follow one line; null where x never changes within a group, or no degree of
    /// freedom is left.
    /// </summary>
    /// <param name="groups">Each group's x and y, of the same length.</param>
    /// <exception cref="ArgumentException">A group without pairs, a value that is not finite, or numbers of x and y that
    /// differ.</exception>
    public static double? Probability(IReadOnlyList<PairGroup> groups)
    {
        if (groups.Count < 2 || CommonSlope.Of(groups) is not { } parallel)
        {
            return null;
        }

        double within = groups.Sum(g => SquaresAbout(g, parallel.Value));
        PairGroup all = new([.. groups.SelectMany(g => g.X)], [.. groups.SelectMany(g => g.Y)]);
        double whole = SquaresAbout(all, RegressionLine.Of(all.X, all.Y).Slope.Value);
        double chance =
            new VarianceRatio(Math.Max(0, whole - within), groups.Count - 1, within, parallel.DegreesOfFreedom).Probability;
        return double.IsNaN(chance) ? null : chance;
    }

    private static double SquaresAbout(PairGroup pairs, double slope)
    {
        double[] left = [.. Deviations.FromMean(pairs.Y).Zip(Deviations.FromMean(pairs.X), (y, x) => y - (slope * x))];
        return Deviations.Product(left, left);
    }
}
