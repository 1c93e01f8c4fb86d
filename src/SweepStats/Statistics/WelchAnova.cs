namespace SweepStats.Statistics;

/// <summary>Whether groups have the same mean, where each scatters by its own amount.</summary>
/// <remarks>
/// Formula: with weights w = n/s², W = Σw and the weighted mean m̃, F = [Σw(m − m̃)²/(k − 1)] / [1 + 2(k − 2)/(k² − 1)·Λ], Λ =
/// Σ(1 − w/W)²/(n − 1), on k − 1 and (k² − 1)/(3Λ) degrees of freedom. With two groups it is Welch's t squared. Assumes
/// independent normal values; every group needs two that differ. Source: Welch 1951, Biometrika 38, 330 (from memory). Error:
/// relative 1e-11 (fixtures/oracles/groups.R).
/// </remarks>
public sealed record WelchAnova
{
    private WelchAnova()
    {
    }

    /// <summary>Ratio of the scatter of the means to what their own errors explain.</summary>
    public required double F { get; init; }

    /// <summary>Groups minus one.</summary>
    public required int BetweenDegreesOfFreedom { get; init; }

    /// <summary>Effective degrees of freedom of the scatter within.</summary>
    public required double WithinDegreesOfFreedom { get; init; }

    /// <summary>Probability of an F at least as large where the means are alike.</summary>
    public double Probability => new VarianceRatio(F * BetweenDegreesOfFreedom, BetweenDegreesOfFreedom, WithinDegreesOfFreedom,
        WithinDegreesOfFreedom).Probability;

    /// <summary>Compares groups.</summary>
    /// <exception cref="ArgumentException">Fewer than two groups, or one without two values that differ.</exception>
    public static WelchAnova Of(IReadOnlyList<double[]> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count < 2)
        {
            throw new ArgumentException("At least two groups are needed.", nameof(groups));
        }

        var means = new double[groups.Count];
        var weights = new double[groups.Count];
        for (int g = 0; g < groups.Count; g++)
        {
            FiniteValues.Require(groups[g], 2, nameof(groups));
            double deviation = Sample.StandardDeviation(groups[g]);
            if (deviation == 0)
            {
                throw new ArgumentException(
                    $"The values of group {g} are all alike: nothing tells how far its mean can be trusted.", nameof(groups));
            }

            (means[g], weights[g]) = (Sample.Mean(groups[g]), groups[g].Length / (deviation * deviation));
        }

        return Of(means, weights, [.. groups.Select(g => g.Length)]);
    }

    private static WelchAnova Of(double[] means, double[] weights, int[] sizes)
    {
        double total = weights.Sum(), k = means.Length;
        double centre = means.Zip(weights, (m, w) => m * w).Sum() / total;
        double between = means.Zip(weights, (m, w) => w * (m - centre) * (m - centre)).Sum() / (k - 1);
        double spread = weights.Zip(sizes, (w, n) => (1 - (w / total)) * (1 - (w / total)) / (n - 1)).Sum();
        return new WelchAnova
        {
            F = between / (1 + (2 * (k - 2) / ((k * k) - 1) * spread)),
            BetweenDegreesOfFreedom = means.Length - 1,
            WithinDegreesOfFreedom = ((k * k) - 1) / (3 * spread),
        };
    }
}
