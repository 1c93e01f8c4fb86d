using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Statistics;

/// <summary>How far from its mean a sample bounds a share of all that it was drawn from.</summary>
public static class ToleranceLimit
{
    /// <summary>The factor k of a one-sided limit mean − k·s (or mean + k·s) for normal values.</summary>
    /// <remarks>
    /// Formula: k = t'(confidence; n − 1, z(share)·√n)/√n, t' the quantile of the noncentral t. Dimensionless. Error: relative
    /// 1e-10 (fixtures/published/tolerance-factors). Source: ISO 16269-6 (from memory); NIST/SEMATECH e-Handbook 7.2.6.3.
    /// </remarks>
    /// <param name="count">Values in the sample, at least 2.</param>
    /// <param name="share">Share of all that is to lie beyond the limit, for example 0.95.</param>
    /// <param name="confidence">Share of samples whose limit does so.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values, or a share that is not between 0 and 1.</exception>
    public static double NormalFactor(int count, double share, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        FiniteValues.RequireLevel(share);
        FiniteValues.RequireLevel(confidence);
        double root = Math.Sqrt(count);
        return NoncentralT.Quantile(confidence, count - 1, Normal.InvCDF(0, 1, share) * root) / root;
    }

    /// <summary>
    /// The one-sided lower limit of normal values, mean − k·s, with the quantile that it is a limit of, mean − z(share)·s.
    /// </summary>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is not between 0 and 1.</exception>
    internal static ToleranceBound Lower(ReadOnlySpan<double> values, double share, double confidence)
    {
        double mean = Sample.Mean(values), deviation = Sample.StandardDeviation(values);
        return new ToleranceBound(mean - (Normal.InvCDF(0, 1, share) * deviation),
            mean - (NormalFactor(values.Length, share, confidence) * deviation));
    }

    /// <summary>
    /// Fewest values whose lowest is a limit that a share of all lies above, whatever the distribution: the least n with
    /// 1 − shareⁿ ≥ confidence.
    /// </summary>
    /// <remarks>
    /// Source: Wilks 1941, Annals of Mathematical Statistics 12, 91 (from memory): 59 for 95 %/95 %, 29 for 90 %/95 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A share is not between 0 and 1.</exception>
    public static int FewestWithoutDistribution(double share, double confidence) => Fewest(share, confidence, 1);

    /// <summary>Fewest values whose lowest and highest hold a share of all between them, whatever the distribution.</summary>
    /// <remarks>
    /// The share between the extremes is a beta variable: 1 − n·pⁿ⁻¹ + (n − 1)·pⁿ. Source: Wilks 1941 (from memory): 93 for 95
    /// %/95 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A share is not between 0 and 1.</exception>
    public static int FewestBetweenExtremes(double share, double confidence) => Fewest(share, confidence, 2);

    /// <summary>
    /// Which of the sorted values, counted from the lowest as 1, is a limit that a share of all lies above; 0 where even the
    /// lowest is none.
    /// </summary>
    /// <remarks>
    /// The largest r with P(r or more of n fall below the quantile) ≥ confidence, a binomial sum. Source: Conover 1999, chapter
    /// 3.3 (from memory).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one value, or a share that is not between 0 and 1.</exception>
    public static int RankWithoutDistribution(int count, double share, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        FiniteValues.RequireLevel(share);
        FiniteValues.RequireLevel(confidence);
        double below = 0, term = Math.Pow(share, count);
        int rank = 0;
        // Fewer than r of n below: Σ C(n, i)(1 − p)^i p^(n − i), i < r.
        while (rank < count && (below += term) <= 1 - confidence)
        {
            rank++;
            term *= (count - rank + 1.0) / rank * (1 - share) / share;
        }

        return rank;
    }

    private static int Fewest(double share, double confidence, int extremes)
    {
        FiniteValues.RequireLevel(share);
        FiniteValues.RequireLevel(confidence);
        int count = extremes;
        while (1 - Missing(count, share, extremes) < confidence)
        {
            count++;
        }

        return count;
    }

    private static double Missing(int count, double share, int extremes) => extremes == 1
        ? Math.Pow(share, count)
        : (count * Math.Pow(share, count - 1)) - ((count - 1) * Math.Pow(share, count));
}
