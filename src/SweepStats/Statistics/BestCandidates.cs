namespace SweepStats.Statistics;

/// <summary>Candidates that cannot be told from the best: together they hold the truly best one at a given level.</summary>
/// <remarks>
/// A candidate is left out where some other lies above it by more than the truly best one would be topped by any of the others,
/// one-sided and simultaneous over the others (<see cref="ManyToOne"/>). Only the truly best candidate has to stay, so nothing is
/// due for the number of candidates asked about. A candidate that is known from below only may be the best whatever its bound,
/// and always stays; its bound still speaks against others. Assumes independent normal means. Source: Hsu 1984, Annals of
/// Statistics 12, 1136 (from memory). Error: the size, at most 5 % of rehearsed sets miss the best.
/// </remarks>
public static class BestCandidates
{
    /// <summary>Which candidates stay.</summary>
    /// <param name="candidates">All of them.</param>
    /// <param name="level">Chance that the truly best one is left out, for example 0.05.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level does not lie between 0 and 1.</exception>
    public static bool[] Among(IReadOnlyList<CandidateMean> candidates, double level, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        FiniteValues.RequireLevel(level);
        if (candidates.Count == 0)
        {
            return [];
        }

        CandidateMean highest = candidates.MaxBy(c => c.Value);
        return SideBySide.Of(candidates.Count, threads, i => candidates[i].Open
            || (!PlainlyBelow(candidates[i], highest, level / (candidates.Count - 1)) && Stays(candidates, i, level)));
    }

    // One comparison that tells enough for all others decides alone, and that with the highest mostly does.
    private static bool PlainlyBelow(CandidateMean own, CandidateMean highest, double level)
    {
        (double apart, double dof) = highest.Above(own);
        return apart > 0 && StudentT.UpperTail(apart, dof) <= level;
    }

    private static bool Stays(IReadOnlyList<CandidateMean> candidates, int own, double level)
    {
        double clearest = 1, t = 0, freedom = 0;
        for (int j = 0; j < candidates.Count; j++)
        {
            if (j == own || !(candidates[j].Value > candidates[own].Value))
            {
                continue;
            }

            (double apart, double dof) = candidates[j].Above(candidates[own]);
            if (apart <= t && dof <= freedom)
            {
                // Neither farther above nor better known: no clearer either.
                continue;
            }

            double tail = apart > 0 ? StudentT.UpperTail(apart, dof) : 1;
            if (tail < clearest)
            {
                (clearest, t, freedom) = (tail, apart, dof);
            }
        }

        // One comparison tells at least this much, and all together at most the sum: mostly that decides.
        int others = candidates.Count - 1;
        return clearest > level
            || (clearest * others > level && ManyToOne.UpperTail(t, Loadings(candidates, own), freedom) > level);
    }

    // Differences to one candidate have its error in common.
    private static double[] Loadings(IReadOnlyList<CandidateMean> candidates, int own)
    {
        double square = candidates[own].StandardError * candidates[own].StandardError;
        return [.. candidates.Where((_, j) => j != own)
            .Select(c => square > 0 ? Math.Sqrt(square / ((c.StandardError * c.StandardError) + square)) : 0)];
    }
}
