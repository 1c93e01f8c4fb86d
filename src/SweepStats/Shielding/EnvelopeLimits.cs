namespace SweepStats.Shielding;

/// <summary>
/// The widest of the intervals for every way of averaging, and every place of a declared floor, that has to be reckoned with.
/// </summary>
/// <remarks>
/// Where the averaging is stated and the floor measured there is one and this changes nothing. The estimate is the middle of the
/// single estimates.
/// </remarks>
internal readonly record struct EnvelopeLimits(
    double SeDb, double LowDb, double HighDb, double OneSidedLowDb, double StandardUncertaintyDb, double DegreesOfFreedom)
{
    /// <summary>Whether there is no upper end: one way of averaging at least leaves it open.</summary>
    public bool Capped => double.IsPositiveInfinity(HighDb);

    /// <summary>
    /// Half of what the single estimates differ by, in dB; 0 where one of them is not finite, since only a bound is given there.
    /// </summary>
    public double HalfWidthDb { get; private init; }

    /// <summary>The envelope of all estimators; without repeats the one-sided limit stays +∞ and means nothing.</summary>
    public static EnvelopeLimits Of(in ReadingLevels levels, ImmutableArray<ReadingEstimator> estimators, bool floorKnown,
        bool repeated)
    {
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity, low = double.PositiveInfinity;
        double high = double.NegativeInfinity, oneSided = double.PositiveInfinity, uncertainty = 0, dof = double.PositiveInfinity;
        foreach (ReadingEstimator estimator in estimators)
        {
            ReadingBasis basis = floorKnown ? estimator.Basis(levels) : default;
            ShieldingLimits limits = floorKnown ? estimator.TwoSided(basis) : WithoutFloor.Limits(levels, estimator.Confidence);
            lowest = Math.Min(lowest, limits.SeDb);
            highest = Math.Max(highest, limits.SeDb);
            low = Math.Min(low, limits.LowDb);
            high = Math.Max(high, limits.HighDb);
            uncertainty = Math.Max(uncertainty, limits.StandardUncertaintyDb);
            dof = Math.Min(dof, limits.DegreesOfFreedom);
            if (repeated)
            {
                oneSided = Math.Min(oneSided,
                    floorKnown ? estimator.OneSidedLow(basis) : WithoutFloor.OneSidedLow(levels, estimator.Confidence));
            }
        }

        return new EnvelopeLimits((lowest + highest) / 2, low, high, oneSided, uncertainty, dof)
        {
            HalfWidthDb = double.IsFinite(highest - lowest) ? (highest - lowest) / 2 : 0,
        };
    }
}
