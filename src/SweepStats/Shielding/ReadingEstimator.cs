using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>The two-sided interval and the one-sided lower limit for one way of averaging.</summary>
internal sealed class ReadingEstimator
{
    private readonly ShieldingInterval _twoSided;
    private readonly ShieldingInterval _oneSided;

    public ReadingEstimator(DetectorNoise noise, Confidence confidence, CoveredReadings covered)
    {
        Noise = noise;
        Confidence = confidence;
        _twoSided = new ShieldingInterval(noise, confidence, covered);
        // The lower end of a 90 % interval is a one-sided 95 % limit. At or below 50 % there is no such interval; the two-sided limit stands in, which is safe.
        _oneSided = confidence.Level > 0.5 ? new ShieldingInterval(noise, new Confidence((2 * confidence.Level) - 1), covered) : _twoSided;
    }

    public DetectorNoise Noise { get; }

    public Confidence Confidence { get; }

    public ShieldingLimits TwoSided(ReadingLevels levels) => _twoSided.For(levels);

    public double OneSidedLow(ReadingLevels levels) => _oneSided.For(levels).LowDb;
}
