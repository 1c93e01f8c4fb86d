namespace SweepStats.Statistics;

/// <summary>The slope that several groups of pairs share, each group with a level of its own.</summary>
/// <remarks>
/// Formula: b = ΣΣ(x − x̄ⱼ)(y − ȳⱼ)/ΣΣ(x − x̄ⱼ)² over groups j, u(b) = s/√ΣΣ(x − x̄ⱼ)², s² the squared residuals over N − k − 1
/// degrees of freedom for N pairs in k groups. One group gives the plain line of least squares. Assumes independent normal
/// scatter of y of one size in all groups and an x without error. Source: analysis of covariance, Fisher 1932, Statistical
/// Methods for Research Workers (from memory). Error: relative 1e-12 (fixtures/oracles/trend.R).
/// </remarks>
internal static class CommonSlope
{
    /// <summary>
    /// Fits the slope; null where it cannot be told: x never changes within a group, or no degree of freedom is left.
    /// </summary>
    /// <param name="groups">Each group's x and y, of the same length.</param>
    /// <exception cref="ArgumentException">
    /// A group without pairs, a value that is not finite, or numbers of x and y that differ.
    /// </exception>
    public static SlopeEstimate? Of(IReadOnlyList<PairGroup> groups)
    {
        List<double> dx = [];
        List<double> dy = [];
        foreach ((double[] x, double[] y) in groups)
        {
            FiniteValues.RequirePairs(x, y, 1);
            dx.AddRange(Deviations.FromMean(x));
            dy.AddRange(Deviations.FromMean(y));
        }

        double[] across = [.. dx];
        double[] up = [.. dy];
        double squares = Deviations.Product(across, across);
        int freedom = across.Length - groups.Count - 1;
        if (!(squares > 0) || freedom < 1)
        {
            return null;
        }

        double slope = Deviations.Product(across, up) / squares;
        double[] rest = [.. across.Zip(up, (x, y) => y - (slope * x))];
        return new SlopeEstimate(slope, Math.Sqrt(Deviations.Product(rest, rest) / freedom / squares), freedom);
    }
}
