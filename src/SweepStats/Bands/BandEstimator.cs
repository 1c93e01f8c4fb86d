using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>Statements over the analysed band for one specimen.</summary>
/// <remarks>
/// Mean: computed again with each sweep (or placement) left out; its error is the jackknife's for each role, u² = (n−1)/n·Σ(θ₋ⱼ − θ̄)², so a whole sweep counts
/// as one repeat however many frequencies it has. Floor and type B errors are taken as moving all frequencies together. Capped frequencies stand at their lower
/// limit and make the mean a lower bound. Source: Efron 1982, The Jackknife, the Bootstrap and Other Resampling Plans, chapter 3 (from memory).
/// Tenth percentile: the percentile of scattered estimates lies too low, and leaving one out does not show it, so its limits are the percentiles of the lower
/// and of the upper limits, which is cautious.
/// Share meeting a requirement: between what is shown to meet and what is not shown to fail, by limits that hold at all frequencies together (Bonferroni).
/// </remarks>
public static class BandEstimator
{
    /// <summary>States what holds over the band.</summary>
    public static BandStatement State(ShieldingCurve curve, FrequencyGrid grid, Requirement? requirement, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(grid);
        double[] weights = LogWeights.Of(grid);
        (Decibels? atLeast, Hertz? weakest) = Weakest(curve);
        var figures = new FigureEstimator(curve, confidence);
        return new BandStatement
        {
            Name = curve.Name,
            Band = grid.Band,
            AtLeast = atLeast,
            WeakestAt = weakest,
            MeanDb = figures.Estimate(se => Mean(se, weights)),
            TenthPercentileDb = TenthPercentile(curve, weights),
            ShareMeeting = requirement is null ? null : MeetingShare.Of(curve, weights, requirement, confidence),
            CappedCount = curve.Readings.Count(r => r.State == ShieldingState.Capped),
            PointCount = curve.Readings.Length,
        };
    }

    private static (Decibels? AtLeast, Hertz? At) Weakest(ShieldingCurve curve)
    {
        Decibels? lowest = null;
        Hertz? at = null;
        foreach (ShieldingReading reading in curve.Readings)
        {
            if (reading is ShieldingReading.Unreadable || reading.Evidence.OneSidedLow is not { } low)
            {
                return (null, null);
            }

            if (lowest is null || low < lowest)
            {
                (lowest, at) = (low, reading.Evidence.At);
            }
        }

        return (lowest, at);
    }

    private static double Mean(double[] shielding, double[] weights)
    {
        double sum = 0;
        for (int f = 0; f < weights.Length; f++)
        {
            sum += weights[f] * shielding[f];
        }

        return sum;
    }

    private static BandFigure TenthPercentile(ShieldingCurve curve, double[] weights)
    {
        if (curve.Readings.Any(r => r is ShieldingReading.Unreadable))
        {
            return default;
        }

        double Tenth(Func<ShieldingReading, double> end) => WeightedQuantile.Of([.. curve.Readings.Select(end)], weights, 0.1);
        double value = Tenth(r => r switch
        {
            ShieldingReading.Measured m => m.Shielding.Value.Value,
            ShieldingReading.Unrepeated u => u.Indication.Value,
            _ => double.PositiveInfinity,
        });
        double? known = double.IsFinite(value) ? value : null;
        if (curve.Readings.Any(r => r is ShieldingReading.Unrepeated))
        {
            return new BandFigure(curve.Readings.All(r => r is ShieldingReading.Unrepeated) ? known : null, null, null);
        }

        double low = Tenth(r => r is ShieldingReading.Measured m ? m.Shielding.Low.Value : ((ShieldingReading.AtLeast)r).Bound.Value);
        double high = Tenth(r => r is ShieldingReading.Measured m ? m.Shielding.High.Value : double.PositiveInfinity);
        return double.IsFinite(high) ? new BandFigure(known, low, high) : new BandFigure(null, low, null);
    }
}
