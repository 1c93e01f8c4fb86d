namespace SweepStats.Statistics;

/// <summary>How probable it is for each of several means to be the largest true one.</summary>
/// <remarks>
/// Drawn: μ_i = m_i − u_i·Z_i/S, Z_i independent standard normal, S² a chi-square variable over its degrees of freedom, one S a
/// draw, as behind one pooled scatter; infinite degrees of freedom give S = 1. It is what normal readings leave open about the
/// true means where nothing was known before (a flat prior). Assumes independent errors. Unit of the means. Error:
/// √(p(1 − p)/draws), at most 0.4 % for 20 000 draws (fixtures/oracles/best-of.R). Source: the joint distribution of the means
/// given pooled scatter, Box and Tiao 1973, chapter 2 (from memory). One stream, one thread: the same seed gives the same
/// shares anywhere.
/// </remarks>
public static class BestOf
{
    /// <summary>
    /// Share of the draws in which each mean is the largest; those that tie share a draw. The shares add up to 1.
    /// </summary>
    /// <remarks>
    /// A mean that is a lower bound enters as it stands, by its bound; what its share then says is in <see cref="Limits"/>.
    /// </remarks>
    /// <param name="means">Finite, at least one.</param>
    /// <param name="standardErrors">u_i, not negative; 0 where a mean is exact.</param>
    /// <param name="degreesOfFreedom">Of the common scatter, positive or infinite.</param>
    /// <param name="seed">Of the draws.</param>
    /// <param name="draws">At least one.</param>
    /// <exception cref="ArgumentException">
    /// No means, lengths differ, a value is not finite, or a standard error is negative.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom that are not positive, or no draws.</exception>
    public static double[] Shares(ReadOnlySpan<double> means, ReadOnlySpan<double> standardErrors, double degreesOfFreedom,
        ulong seed, int draws)
    {
        FiniteValues.RequirePairs(means, standardErrors, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 1);
        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom,
                "Degrees of freedom must be positive.");
        }

        foreach (double error in standardErrors)
        {
            if (error < 0)
            {
                throw new ArgumentException(FormattableString.Invariant($"A standard error is not negative: {error}."),
                    nameof(standardErrors));
            }
        }

        var random = new RandomSource(seed);
        var shares = new double[means.Length];
        var drawn = new double[means.Length];
        for (int draw = 0; draw < draws; draw++)
        {
            double scale = double.IsPositiveInfinity(degreesOfFreedom) ? 1
                : Math.Sqrt(degreesOfFreedom / 2 / random.Gamma(degreesOfFreedom / 2));
            for (int i = 0; i < drawn.Length; i++)
            {
                drawn[i] = means[i] - (standardErrors[i] * scale * random.Normal());
            }

            Credit(drawn, shares, 1.0 / draws);
        }

        return shares;
    }

    /// <summary>Between which limits the probability of each lies, where some means are known only from below.</summary>
    /// <remarks>
    /// A mean that may lie anywhere above its bound can only gain on its share, and the others only lose. So with no such mean
    /// the share is both limits; beside such a mean the share is an upper limit and 0 the lower one; for such a mean itself 1 is
    /// the upper limit, and its share the lower one if it is alone of its kind: beside a second one that may lie above it, 0.
    /// </remarks>
    /// <param name="shares">From <see cref="Shares"/>.</param>
    /// <param name="openAbove">Which of the means are lower bounds.</param>
    /// <exception cref="ArgumentException">Lengths differ.</exception>
    public static Interval[] Limits(ReadOnlySpan<double> shares, ReadOnlySpan<bool> openAbove)
    {
        if (shares.Length != openAbove.Length)
        {
            throw new ArgumentException($"Each share needs to say whether its mean is a bound: {shares.Length} and "
                + $"{openAbove.Length}.", nameof(openAbove));
        }

        int open = openAbove.Count(true);
        var limits = new Interval[shares.Length];
        for (int i = 0; i < limits.Length; i++)
        {
            bool othersOpen = open > (openAbove[i] ? 1 : 0);
            limits[i] = new Interval(othersOpen ? 0 : shares[i], openAbove[i] ? 1 : shares[i]);
        }

        return limits;
    }

    private static void Credit(double[] drawn, double[] shares, double weight)
    {
        double largest = drawn.Max();
        int first = Array.IndexOf(drawn, largest);
        int ties = drawn.AsSpan(first).Count(largest);
        for (int i = first; i < drawn.Length && ties > 0; i++)
        {
            shares[i] += drawn[i] == largest ? weight / ties : 0;
        }
    }
}
