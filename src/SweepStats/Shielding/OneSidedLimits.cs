using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>Lower and upper limits of a curve, each with the whole level on its own side, at any level from 0.5 on. For one thread.</summary>
/// <remarks>At 0.5 both are the estimate. The upper limit is infinite where only a bound is known, or where the floor hides it at that level.</remarks>
internal sealed class OneSidedLimits(ShieldingCurve curve)
{
    private readonly Dictionary<double, ImmutableArray<ReadingEstimator>> _estimators = [];

    public (double Low, double High) At(int f, double level)
    {
        if (curve.Levels is null)
        {
            return (double.NegativeInfinity, double.PositiveInfinity);
        }

        if (!_estimators.TryGetValue(level, out ImmutableArray<ReadingEstimator> estimators))
        {
            estimators = curve.Levels.Estimators(new Confidence((2 * Math.Max(level, Confidence.NearlyEven)) - 1));
            _estimators.Add(level, estimators);
        }

        (double low, double high) = curve.Ends(f, estimators);
        return (low, high);
    }
}
