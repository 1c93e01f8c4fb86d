using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>Statements over the analysed band for one specimen.</summary>
/// <remarks>
/// Mean and tenth percentile: the figure is computed again with each sweep (or placement) left out, and its error is the jackknife's for each role,
/// u² = (n−1)/n·Σ(θ₋ⱼ − θ̄)², so a whole sweep counts as one repeat however many frequencies it has. Floor and type B errors are taken as moving all
/// frequencies together. Capped frequencies stand at their lower limit and make the figure a lower bound. Source: Efron 1982, The Jackknife, chapter 3.
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
            TenthPercentileDb = figures.Estimate(se => WeightedQuantile.Of(se, weights, 0.1)),
            ShareMeeting = requirement is null ? null : Share(curve, requirement, weights),
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

    // A share has no smooth error: it is bracketed by what is shown to meet and what is not shown to fail.
    private static BandFigure? Share(ShieldingCurve curve, Requirement requirement, double[] weights)
    {
        double asked = 0, met = 0, shown = 0, possible = 0;
        bool bounded = false, repeated = true;
        for (int f = 0; f < weights.Length; f++)
        {
            ShieldingReading reading = curve.Readings[f];
            if (requirement.At(reading.Evidence.At) is not { } wanted)
            {
                continue;
            }

            (double low, double value, double high) = Ends(reading);
            asked += weights[f];
            shown += low >= wanted.Value ? weights[f] : 0;
            met += value >= wanted.Value ? weights[f] : 0;
            possible += high >= wanted.Value ? weights[f] : 0;
            bounded |= double.IsNaN(value) && low < wanted.Value;
            repeated &= reading is not ShieldingReading.Unrepeated;
        }

        return asked == 0 ? null : repeated
            ? new BandFigure(bounded ? null : (shown + Math.Max(0, met - shown)) / asked, shown / asked, possible / asked)
            : new BandFigure(bounded ? null : met / asked, null, null);
    }

    private static (double Low, double Value, double High) Ends(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => (m.Shielding.Low.Value, m.Shielding.Value.Value, m.Shielding.High.Value),
        ShieldingReading.AtLeast b => (b.Bound.Value, double.NaN, double.PositiveInfinity),
        ShieldingReading.Unrepeated u => (double.NegativeInfinity, u.Indication.Value, double.PositiveInfinity),
        _ => (double.NegativeInfinity, double.NaN, double.PositiveInfinity),
    };
}
