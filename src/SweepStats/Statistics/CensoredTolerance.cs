using System.Collections.Concurrent;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Statistics;

/// <summary>
/// The lower limit that a share of all lies above, from a sample some of whose values are known only to lie above a bound.
/// </summary>
/// <remarks>
/// Limit μ̂ − k·σ̂, μ̂ and σ̂ the maximum-likelihood fit of <see cref="CensoredGroups"/> (σ̂ divided by n). Where the largest r
/// of n are cut off at the largest value seen, (μ̂ + z(share))/σ̂ of standard normal samples has one distribution for each n and
/// r, and k is its quantile; drawn with a seed of its own, at least 20 000 times; those of 95 %/95 % were drawn once and are kept
/// (<see cref="CensoredToleranceTable"/>). Unit of the values. Assumes normal values, and bounds that do not depend on the value
/// hidden. Error: confidence 0.15 % (one standard deviation); exact without bounds. Real bounds are no largest values seen. Share
/// of 4 000 samples whose limit held (95 %/95 %; one standard deviation 0.35 %; no limit counts as held): 5, 10 and 20 specimens,
/// one bound that cuts off 10, 30 or 60 %, or bounds that scatter by 0.5 or 1 standard deviation about it: 95.7 to 99.4 %, above
/// 95 because such a bound lies above the largest value seen, which widens σ̂. Setting it back to that value is sharper, and held
/// in 94.1 % at worst. Bounds that say nothing must not count as specimens: with a bound 3 standard deviations under the mean on
/// half of 20 specimens the limit held in 91.5 %. So a bound at or below every value seen is left out: 94.8 to 98.5 % for 5 to 50
/// specimens, 30 or 50 % of them with a bound from −3 to 0 standard deviations, the rest with one at 1 or none. Source: pivots of
/// censored normal samples, Lawless 2003, chapter 5 (from memory); no published factor is at hand, R draws the same
/// (fixtures/oracles/capped.R).
/// </remarks>
public static class CensoredTolerance
{
    /// <summary>
    /// Fewest values seen: nothing tells the scatter of one. With two of ten the factor is 19 (3.07 for all ten seen; 37 for two
    /// alone).
    /// </summary>
    public const int FewestSeen = 2;

    private const ulong Seed = 20_031_985;
    private const int FewestDraws = 20_000;
    private const double ConfidenceError = 0.0015;

    // Each factor is made by one thread while the others wait.
    private static readonly ConcurrentDictionary<(int Count, int Capped, double Share, double Confidence), Lazy<double>> Made =
        new();

    /// <summary>The factor k of μ̂ − k·σ̂, σ̂ divided by n.</summary>
    /// <param name="count">Specimens in the sample.</param>
    /// <param name="capped">How many of them are known only to lie above a bound; at least two must be left.</param>
    /// <param name="share">Share of all that is to lie above the limit, for example 0.95.</param>
    /// <param name="confidence">Share of samples whose limit does so.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// Fewer than two values seen, a negative number of bounds, or a share that is not between 0 and 1.
    /// </exception>
    public static double Factor(int count, int capped, double share, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(capped);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, capped + FewestSeen);
        FiniteValues.RequireLevel(share);
        FiniteValues.RequireLevel(confidence);
        return CensoredToleranceTable.Holds(count, capped, share, confidence)
            ? CensoredToleranceTable.Factor(count, capped)
            : Made.GetOrAdd((count, capped, share, confidence),
                key => new Lazy<double>(() => Make(key.Count, key.Capped, key.Share, key.Confidence))).Value;
    }

    private static double Make(int count, int capped, double share, double confidence) => capped == 0
        ? ToleranceLimit.NormalFactor(count, share, confidence) * Math.Sqrt(count / (count - 1.0))
        : Drawn(count, capped, share, confidence);

    /// <summary>The limit of a sample of normal values.</summary>
    /// <param name="values">Values, or bounds.</param>
    /// <param name="bounds">Which of them are bounds: the value lies above.</param>
    /// <param name="share">As for the factor.</param>
    /// <param name="confidence">As for the factor.</param>
    /// <returns>
    /// The limit; null where fewer than two values are seen or all seen are equal, so that nothing tells the scatter.
    /// </returns>
    /// <exception cref="ArgumentException">Lengths differ, or a value is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is not between 0 and 1.</exception>
    public static double? LowerLimit(ReadOnlySpan<double> values, ReadOnlySpan<bool> bounds, double share, double confidence) =>
        Lower(values, bounds, share, confidence)?.Limit;

    /// <summary>The same with the estimate of the quantile, μ̂ − z(share)·σ̂·√(n/(n − 1)).</summary>
    internal static ToleranceBound? Lower(ReadOnlySpan<double> values, ReadOnlySpan<bool> bounds, double share, double confidence)
    {
        FiniteValues.RequireLevel(share);
        FiniteValues.RequireLevel(confidence);
        if (values.Length != bounds.Length)
        {
            throw new ArgumentException($"Each value needs to say whether it is a bound: {values.Length} and {bounds.Length}.",
                nameof(bounds));
        }

        (double[] kept, bool[] above) = WithoutEmptyBounds(values, bounds);
        return kept.Length > 0 && CensoredGroups.Of(kept, above, new int[kept.Length]) is { } fit
            ? new ToleranceBound(
                fit.Means[0] - (Normal.InvCDF(0, 1, share) * Math.Sqrt(kept.Length / (kept.Length - 1.0)) * fit.Deviation),
                fit.Means[0] - (Factor(kept.Length, above.Count(b => b), share, confidence) * fit.Deviation))
            : null;
    }

    /// <summary>
    /// The limit whatever the distribution: the sorted value of <see cref="ToleranceLimit.RankWithoutDistribution"/>, bounds as
    /// they stand.
    /// </summary>
    /// <remarks>
    /// A bound is safe in the place of its value: every true value lies at it or above, so every sorted one does too.
    /// </remarks>
    /// <param name="values">Values, or bounds from below.</param>
    /// <param name="share">Share of all that is to lie above the limit.</param>
    /// <param name="confidence">Share of samples whose limit does so.</param>
    /// <returns>The limit; null for fewer specimens than <see cref="ToleranceLimit.FewestWithoutDistribution"/>.</returns>
    /// <exception cref="ArgumentException">No values, or one that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is not between 0 and 1.</exception>
    public static double? LowerLimitWithoutDistribution(ReadOnlySpan<double> values, double share, double confidence)
    {
        FiniteValues.Require(values, 1, nameof(values));
        int rank = ToleranceLimit.RankWithoutDistribution(values.Length, share, confidence);
        return rank > 0 ? Ascending.At(values.ToArray(), rank - 1) : null;
    }

    private static (double[] Values, bool[] Bounds) WithoutEmptyBounds(ReadOnlySpan<double> values, ReadOnlySpan<bool> bounds)
    {
        FiniteValues.Require(values, 1, nameof(values));
        if (!bounds.Contains(true))
        {
            return (values.ToArray(), bounds.ToArray());
        }

        double lowest = double.PositiveInfinity;
        for (int i = 0; i < values.Length; i++)
        {
            lowest = bounds[i] ? lowest : Math.Min(lowest, values[i]);
        }

        var kept = new List<double>();
        var above = new List<bool>();
        for (int i = 0; i < values.Length; i++)
        {
            if (!bounds[i] || values[i] > lowest)
            {
                kept.Add(values[i]);
                above.Add(bounds[i]);
            }
        }

        return ([.. kept], [.. above]);
    }

    /// <summary>The factor, drawn: takes 20 to 60 ms.</summary>
    internal static double Drawn(int count, int capped, double share, double confidence)
    {
        int draws = Math.Max(FewestDraws, (int)Math.Ceiling(confidence * (1 - confidence) / (ConfidenceError * ConfidenceError)));
        double beyond = Normal.InvCDF(0, 1, share);
        var random = new RandomSource(Seed).Fork(((ulong)count << 32) | (uint)capped);
        var sample = new double[count];
        var pivots = new double[draws];
        for (int draw = 0; draw < draws; draw++)
        {
            for (int i = 0; i < count; i++)
            {
                sample[i] = random.Normal();
            }

            Array.Sort(sample);
            ReadOnlySpan<double> seen = sample.AsSpan(0, count - capped);
            (double mean, double deviation) = CappedNormalFit.Of(seen, seen[^1], capped);
            pivots[draw] = (mean + beyond) / deviation;
        }

        Array.Sort(pivots);
        return pivots[Math.Min(draws - 1, (int)Math.Ceiling(confidence * draws) - 1)];
    }
}
