namespace SweepStats.Statistics;

/// <summary>Means of groups of one common scatter, some of whose values are known only to lie above a bound. Immutable.</summary>
/// <remarks>
/// Maximum likelihood of a normal model with right-censored values: a bound c counts with the probability of a value above it,
/// never as a value. In μ/σ and 1/σ the likelihood is concave (Olsen 1978, Econometrica 46, 1211; from memory), so Newton's steps
/// find its only summit. A group of bounds alone has no summit: its mean is reported as infinite, and it says nothing of the
/// scatter. Unit of the values. Assumes bounds that do not depend on the value hidden. Error: relative 1e-9
/// (fixtures/oracles/censored.R).
/// </remarks>
public sealed record CensoredGroups
{
    private CensoredGroups()
    {
    }

    /// <summary>Mean of each group; +∞ for a group of bounds alone.</summary>
    public required ImmutableArray<double> Means { get; init; }

    /// <summary>Common standard deviation, maximum likelihood (divided by n).</summary>
    public required double Deviation { get; init; }

    /// <summary>Logarithm of the likelihood.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Fits the groups.</summary>
    /// <param name="values">Values, or bounds.</param>
    /// <param name="censored">Which of them are bounds: the value lies above.</param>
    /// <param name="groups">The group of each, numbered from 0 without gaps.</param>
    /// <returns>The fit; null where no group has two values that differ, so that nothing tells the scatter.</returns>
    /// <exception cref="ArgumentException">Lengths differ, or a value is not finite.</exception>
    public static CensoredGroups? Of(ReadOnlySpan<double> values, ReadOnlySpan<bool> censored, ReadOnlySpan<int> groups)
    {
        FiniteValues.Require(values, 1, nameof(values));
        if (values.Length != censored.Length || values.Length != groups.Length)
        {
            throw new ArgumentException("Each value needs its group and whether it is a bound.", nameof(values));
        }

        if (!censored.Contains(true))
        {
            return OfValues(values, groups);
        }

        var climb = new CensoredClimb(values, censored, groups);
        return climb.Fits ? climb.Summit() : null;
    }

    // Where nothing is hidden the summit is known: the means of the groups, and the scatter about them.
    private static CensoredGroups? OfValues(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        double[][] own = GroupRows.Of(values, groups);
        if (Array.TrueForAll(own, g => g.AsSpan().IndexOfAnyExcept(g[0]) < 0))
        {
            return null;
        }

        double[] means = [.. own.Select(g => Sample.Mean(g))];
        double squares = own.Zip(means, (g, mean) => Sample.SquaredDeviations(g, mean)).Sum();
        double deviation = Math.Sqrt(squares / values.Length);
        return From([.. means], deviation, -values.Length * (Math.Log(deviation) + (0.5 * (1 + Math.Log(2 * Math.PI)))));
    }

    internal static CensoredGroups From(ImmutableArray<double> means, double deviation, double logLikelihood) =>
        new() { Means = means, Deviation = deviation, LogLikelihood = logLikelihood };
}
