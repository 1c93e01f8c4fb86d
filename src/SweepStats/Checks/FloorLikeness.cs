using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>Covered levels that run parallel to the floor, though what was sent does not.</summary>
/// <remarks>
/// Noise with another gain, attenuator or input before it keeps the shape of the floor. What comes from the source keeps the
/// ripple of the reference: a specimen that took off just that ripple, to the scatter of the sweeps, would be a rare chance. A
/// slope is none, since both may fall towards the end of a band. Where the reference has no ripple over the floor nothing is
/// told.
/// </remarks>
internal static class FloorLikeness
{
    // Fewer frequencies have no shape.
    public const int FewestPoints = 20;

    // How much more than chance does the ripple of the reference has to move it (judgement, no source).
    private const double RippleRatio = 2;

    // The deviation of 20 means is within a third of its standard error nearly always: 1 + 2/√(2·19).
    private const double Slack = 4.0 / 3;

    // Of the reference's ripple all comes through, or nothing; a quarter is nearer to nothing (judgement, no source).
    private const double LeastShare = 0.25;

    private static readonly Confidence Sure = new(0.998);

    /// <summary>How far above the floor a specimen runs parallel to it, in dB; null where it does not.</summary>
    /// <param name="curve">The specimen.</param>
    /// <param name="floor">The floor.</param>
    public static double? RiseDb(ShieldingCurve curve, NoiseFloor floor)
    {
        if (!HasShape(curve))
        {
            return null;
        }

        double[] covered = Over(floor, curve.Readings.CoveredDb), ripple = Ripple(curve, floor);
        return FollowsNot(ripple, covered) && IsChance(ripple, covered, ErrorDb(curve.Levels!, covered.Length))
            ? Sample.Mean(covered) : null;
    }

    /// <summary>Whether the reference has a ripple that would show.</summary>
    public static bool CanTell(ShieldingCurve curve, NoiseFloor floor) => HasShape(curve)
        && Sample.StandardDeviation(Ripple(curve, floor)) >= RippleRatio * ErrorDb(curve.Levels!, curve.Readings.Length);

    /// <summary>Whether what it lets through follows the ripple of the reference, as the source does.</summary>
    public static bool Follows(ShieldingCurve curve, NoiseFloor floor)
    {
        if (!HasShape(curve))
        {
            return false;
        }

        double[] ripple = Ripple(curve, floor);
        return Sample.StandardDeviation(ripple) > 0 && RegressionLine.Of(ripple, Over(floor, curve.Readings.CoveredDb))
            .Slope.Interval(Sure).Low >= LeastShare;
    }

    private static bool HasShape(ShieldingCurve curve) => curve.Readings.Length >= FewestPoints && curve.Levels is not null;

    private static double[] Ripple(ShieldingCurve curve, NoiseFloor floor)
    {
        double[] reference = Over(floor, curve.Readings.ReferenceDb);
        return EvenLine.Of(reference).Residuals(reference);
    }

    // What comes through a specimen follows: most end here, before the error of each level is asked for.
    private static bool FollowsNot(double[] ripple, double[] covered) =>
        Sample.StandardDeviation(ripple) is > 0 and var moved && moved >= RippleRatio / Slack * Sample.StandardDeviation(covered)
        && RegressionLine.Of(ripple, covered).Slope.Interval(Sure).High < LeastShare;

    private static bool IsChance(double[] ripple, double[] covered, double chanceDb) =>
        Sample.StandardDeviation(ripple) >= RippleRatio * chanceDb
        && Sample.StandardDeviation(covered) <= Slack * chanceDb;

    private static double[] Over(NoiseFloor floor, ReadOnlySpan<double> levelsDb)
    {
        double[] over = levelsDb.ToArray();
        for (int f = 0; f < over.Length; f++)
        {
            over[f] -= floor.LevelDb[f];
        }

        return over;
    }

    // What chance moves a covered mean over the floor by; offsets of placements are in it, so that it is rather too large.
    private static double ErrorDb(CurveLevels levels, int points)
    {
        double sum = 0;
        for (int f = 0; f < points; f++)
        {
            ReadingLevels at = levels[f];
            sum += Square(at.Covered.Error.StandardUncertainty) + Square(at.Floor.Error.StandardUncertainty);
        }

        return Math.Sqrt(sum / points);
    }

    private static double Square(double value) => value * value;
}
