using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>The two-sided interval and the one-sided lower limit for one way of averaging and one place of the floor.</summary>
internal sealed class ReadingEstimator
{
    private readonly IReadingInterval _twoSided;
    private readonly IReadingInterval _oneSided;

    private ReadingEstimator(ReadingWay way, double floorShiftDb, Confidence confidence, CoveredReadings covered)
    {
        FloorShiftDb = floorShiftDb;
        Noise = way.Noise;
        Law = way.Law;
        Confidence = confidence;
        _twoSided = way.Interval(confidence, covered);
        // The lower end of a 90 % interval is a one-sided 95 % limit. At or below 50 % there is no such interval; the two-sided
        // limit stands in, which is safe.
        _oneSided = confidence.Level > 0.5 ? way.Interval(new Confidence((2 * confidence.Level) - 1), covered) : _twoSided;
    }

    /// <summary>
    /// One for each way of reading that has to be reckoned with, and each end of where a declared floor may lie.
    /// </summary>
    /// <param name="noises">How noise reads, one for each way of averaging.</param>
    /// <param name="floorHalfWidthDb">How far the floor may lie off to either side.</param>
    /// <param name="confidence">Two-sided level.</param>
    /// <param name="covered">What is known of the covered readings.</param>
    public static ImmutableArray<ReadingEstimator> All(ImmutableArray<DetectorNoise> noises, double floorHalfWidthDb,
        Confidence confidence, CoveredReadings covered)
    {
        double[] shifts = floorHalfWidthDb > 0 ? [-floorHalfWidthDb, floorHalfWidthDb] : [0];
        return [.. from noise in noises from way in ReadingWay.Of(noise) from shift in shifts select new ReadingEstimator(way,
            shift, confidence, covered)];
    }

    /// <summary>How noise reads, by this way of averaging.</summary>
    public DetectorNoise Noise { get; }

    /// <summary>How it takes the noise out.</summary>
    public ILevelLaw Law { get; }

    /// <summary>How far from its level the floor is taken to lie, in dB; 0 unless it may lie off as a whole.</summary>
    public double FloorShiftDb { get; }

    /// <summary>Two-sided level of the interval, and one-sided level of the limit.</summary>
    public Confidence Confidence { get; }

    /// <summary>Estimate and two-sided interval in dB.</summary>
    public ShieldingLimits TwoSided(in ReadingLevels levels) => TwoSided(Basis(levels));

    /// <summary>What the limits below need of a reading, computed once for both.</summary>
    public ReadingBasis Basis(in ReadingLevels levels) => _twoSided.Basis(Shifted(levels));

    /// <summary>Estimate and two-sided interval in dB, with leakage and stated errors in it.</summary>
    public ShieldingLimits TwoSided(in ReadingBasis basis) =>
        LeakageLaw.Widened(_twoSided.For(basis), basis.Levels, Confidence.TwoSidedQuantile);

    /// <summary>Lower end of the two-sided interval in dB.</summary>
    public double Low(in ReadingBasis basis) => LeakageLaw.Low(_twoSided.Lower(basis), basis.Levels, Confidence.TwoSidedQuantile);

    /// <summary>Upper end of the two-sided interval in dB; infinite where the floor, or a leakage, hides it.</summary>
    public double High(in ReadingBasis basis) =>
        LeakageLaw.High(_twoSided.Upper(basis), basis.Levels, Confidence.TwoSidedQuantile);

    /// <summary>
    /// The levels as the noise correction takes them: the floor where it is taken to lie, and the covered mean without what
    /// scatter of the signal adds.
    /// </summary>
    public ReadingLevels Corrected(in ReadingLevels levels)
    {
        ReadingLevels shifted = Shifted(levels);
        return shifted with { Covered = shifted.Covered with { MeanDb = shifted.Floor.MeanDb + _twoSided.Rise(shifted) } };
    }

    /// <summary>Lower limit in dB at the one-sided level; at one half or less it is that of the two-sided interval.</summary>
    public double OneSidedLow(in ReadingBasis basis) =>
        LeakageLaw.Low(_oneSided.Lower(basis), basis.Levels, Math.Max(Confidence.Level, Confidence.NearlyEven));

    private ReadingLevels Shifted(in ReadingLevels levels) =>
        levels with { Floor = levels.Floor with { MeanDb = levels.Floor.MeanDb + FloorShiftDb } };
}
