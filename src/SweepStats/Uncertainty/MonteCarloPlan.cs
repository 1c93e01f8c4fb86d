using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>How distributions are propagated. Immutable.</summary>
public sealed record MonteCarloPlan
{
    /// <summary>Seed; the same seed gives the same result on every machine.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Level of the intervals.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>
    /// Digits of the standard uncertainty that count, 1 or 2: results are drawn until all of them stand still to half of the last
    /// one.
    /// </summary>
    public int Digits { get; init; } = 2;

    /// <summary>
    /// Tolerance of the ends, where only those have to stand still; null for that of the digits, and mean and standard
    /// uncertainty have to stand still too. Of Student variables with two degrees of freedom, and of results that may be
    /// infinite, the standard deviation does not exist; the ends do.
    /// </summary>
    public double? EndTolerance { get; init; }

    /// <summary>Trials after which it ends all the same.</summary>
    public int MostTrials { get; init; } = 4_000_000;
}
