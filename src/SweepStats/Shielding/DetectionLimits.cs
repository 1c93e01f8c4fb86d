using System.Collections.Concurrent;
using SweepStats.Floor;

namespace SweepStats.Shielding;

/// <summary>
/// Detection limits of a campaign, one for each way of averaging and place of the floor: no specimen changes them. For many
/// threads.
/// </summary>
internal sealed class DetectionLimits
{
    private readonly ConcurrentDictionary<(DetectorNoise Noise, double ConfidenceLevel, double FloorShiftDb),
        DetectionLimit> _made = new();

    /// <summary>The limit for an estimator's noise, level and place of the floor, worked out at the first call.</summary>
    public DetectionLimit Of(ReadingEstimator estimator) => _made.GetOrAdd(
        (estimator.Noise, estimator.Confidence.Level, estimator.FloorShiftDb),
        static (_, e) => new DetectionLimit(e.Noise, e.Confidence, e.FloorShiftDb), estimator);
}
