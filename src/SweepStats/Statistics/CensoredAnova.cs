using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>Whether groups have the same mean, where some values are known only to lie above a bound.</summary>
/// <remarks>
/// Likelihood ratio of one mean a group against one mean for all, of one common scatter. The ratio is turned into the F that has
/// the same likelihood without bounds, F = (e^(LR/N) − 1)·(n − k)/(k − 1), N values and n of them no bounds: exactly Fisher's F
/// where there are none, and careful where there are many. Groups may scatter by unequal amounts: the probability is the larger
/// of two, by the scatter of each (<see cref="CensoredScatter"/>) and with small groups that scatter more
/// (<see cref="UnequalScatter"/>). Source: the likelihood ratio of the normal linear model (from memory). Size: the rehearsed
/// runs of its test.
/// </remarks>
public sealed record CensoredAnova
{
    private CensoredAnova()
    {
    }

    /// <summary>Twice the difference of the log likelihoods.</summary>
    public required double LikelihoodRatio { get; init; }

    /// <summary>
    /// Probability of a ratio at least as large where the means are alike, whether or not the groups scatter alike.
    /// </summary>
    public required double Probability { get; init; }

    /// <summary>The same were the groups known to scatter alike.</summary>
    public required double ProbabilityOfEqualScatter { get; init; }

    /// <summary>Compares groups.</summary>
    /// <param name="values">Values, or bounds.</param>
    /// <param name="censored">Which of them are bounds: the value lies above.</param>
    /// <param name="groups">The group of each, numbered from 0 without gaps.</param>
    /// <returns>The comparison; null where fewer than two groups have a value, or too few values tell the scatter.</returns>
    /// <exception cref="ArgumentException">Lengths differ, or a value is not finite.</exception>
    public static CensoredAnova? Of(ReadOnlySpan<double> values, ReadOnlySpan<bool> censored, ReadOnlySpan<int> groups)
    {
        if (CensoredGroups.Of(values, censored, groups) is not { } each
            || CensoredGroups.Of(values, censored, new int[values.Length]) is not { } one)
        {
            return null;
        }

        int known = values.Length - censored.Count(true);
        // A group of bounds alone still speaks: all of it lies above.
        int means = each.Means.Length;
        if (means < 2 || known <= means)
        {
            return null;
        }

        double ratio = Math.Max(0, 2 * (each.LogLikelihood - one.LogLikelihood));
        double between = SpecialFunctions.Expm1(ratio / values.Length);
        double within = known - means;
        return new CensoredAnova
        {
            LikelihoodRatio = ratio,
            Probability = CensoredScatter.Of(values, censored, groups) is { } scatter ? scatter.Probability(between, within) : 1,
            ProbabilityOfEqualScatter = new VarianceRatio(between, means - 1, 1, within).Probability,
        };
    }
}
