using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Two lots at one frequency.</summary>
/// <param name="DifferenceDb">First less second in dB; not a number where a specimen of either is known from below only.</param>
/// <param name="ErrorDb">
/// Standard error of it: the scatter of both lots, and between campaigns both references, both floors and what both state.
/// Scatter of few repeats is not taken for smaller than around the frequency (<see cref="NeighbourhoodErrors"/>). Not a number
/// where it cannot be told.
/// </param>
/// <param name="DegreesOfFreedom">Of that error, after Welch and Satterthwaite.</param>
/// <param name="CappedFirst">Specimens of the first lot known from below only.</param>
/// <param name="CappedSecond">Of the second.</param>
public readonly record struct HistoryPoint(double DifferenceDb, double ErrorDb, double DegreesOfFreedom, int CappedFirst,
    int CappedSecond)
{
    /// <summary>Some specimen is known from below only: nothing is compared here.</summary>
    public bool Hidden => CappedFirst + CappedSecond > 0;

    /// <summary>Probability of a difference this large between lots that are alike; null where it cannot be told.</summary>
    public double? Probability =>
        ErrorDb > 0 ? Math.Min(1, 2 * StudentT.UpperTail(Math.Abs(DifferenceDb) / ErrorDb, DegreesOfFreedom)) : null;

    /// <summary>The same allowing for the number of frequencies looked at (false discovery rate).</summary>
    public double? Adjusted { get; init; }

    /// <summary>Interval of the difference at this frequency by itself; null where it cannot be told.</summary>
    public Interval? Interval(Confidence level)
    {
        double reach = ErrorDb > 0 ? ErrorDb * StudentQuantile.Of(level.TwoSidedQuantile).At(DegreesOfFreedom) : double.NaN;
        return double.IsNaN(reach) ? null : new Interval(DifferenceDb - reach, DifferenceDb + reach);
    }
}
