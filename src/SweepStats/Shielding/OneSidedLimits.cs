using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>
/// Lower and upper limits of a curve, each with the whole level on its own side, at any level from 0.5 on. For one thread.
/// </summary>
/// <remarks>
/// At 0.5 both are the estimate. The upper limit is infinite where only a bound is known, or where the floor hides it at that
/// level.
/// </remarks>
internal sealed class OneSidedLimits(ShieldingCurve curve)
{
    private readonly CurveEnds _ends = new(curve);
    private readonly Dictionary<double, ImmutableArray<ReadingEstimator>> _estimators = [];

    /// <summary>Lower limit in dB at a frequency.</summary>
    public double Low(int f, double level) => _ends.Low(f, Estimators(level));

    /// <summary>Upper limit in dB at a frequency.</summary>
    public double High(int f, double level) => _ends.High(f, Estimators(level));

    private ImmutableArray<ReadingEstimator> Estimators(double level)
    {
        if (!_estimators.TryGetValue(level, out ImmutableArray<ReadingEstimator> estimators))
        {
            estimators = curve.Levels?.Estimators(new Confidence((2 * Math.Max(level, Confidence.NearlyEven)) - 1)) ?? [];
            _estimators.Add(level, estimators);
        }

        return estimators;
    }
}
