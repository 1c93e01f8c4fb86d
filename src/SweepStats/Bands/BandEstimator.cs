using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>Statements over the analysed band for one specimen.</summary>
/// <remarks>
/// Mean: computed again with each sweep (or placement) left out; its error is the jackknife's for each role,
/// u² = (n−1)/n·Σ(θ₋ⱼ − θ̄)², so a whole sweep counts as one repeat however many frequencies it has. What the display rounds
/// away is one error for each level shown (<see cref="Alignment.ShownRounding"/>). Floor and type B errors are taken as moving
/// all frequencies together. Capped and overloaded frequencies stand at their lower limit and make the mean a lower bound.
/// Source: Efron 1982, The Jackknife, the Bootstrap and Other Resampling Plans, chapter 3 (from memory). Tenth percentile: the
/// percentile of scattered estimates lies too low, and leaving one out does not show it, so its limits are the percentiles of
/// lower and of upper limits that are ten times as strict. Share meeting a requirement: between what is shown to meet and what
/// is not shown to fail, by limits that hold at all frequencies together (Bonferroni).
/// </remarks>
public static class BandEstimator
{
    private const double Share = 0.1;

    /// <summary>States what holds over the band.</summary>
    public static BandStatement State(ShieldingCurve curve, FrequencyGrid grid, DecisionRule? rule, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(grid);
        double[] weights = LogWeights.Of(grid);
        (Decibels? atLeast, Hertz? weakest) = Weakest(curve);
        var figures = new FigureEstimator(curve, weights, confidence);
        FigureParts? mean = figures.Parts();
        var limits = new StrictLimits(curve, Tenfold(confidence), rule,
            rule is null ? null : MeetingShare.Strict(curve, rule, confidence));
        return new BandStatement
        {
            Name = curve.Name,
            Band = grid.Band,
            AtLeast = atLeast,
            WeakestAt = weakest,
            MeanDb = figures.Limits(mean),
            MeanParts = mean,
            TenthPercentileDb = TenthPercentile(curve, weights, limits.OfPercentile),
            ShareMeeting = rule is null || limits.OfShare is not { } ends ? null : MeetingShare.Of(curve, weights, rule, ends),
            CappedCount = curve.Readings.Counted(ShieldingState.Capped),
            OverloadedCount = curve.Readings.Counted(ShieldingState.Overloaded),
            PointCount = curve.Readings.Length,
        };
    }

    private static (Decibels? AtLeast, Hertz? At) Weakest(ShieldingCurve curve)
    {
        int weakest = 0;
        ReadOnlySpan<double> limits = curve.Readings.OneSidedLowDb;
        for (int f = 0; f < limits.Length; f++)
        {
            if (double.IsNaN(limits[f]) || curve.Readings.Mark(f).Kind == ReadingKind.Unreadable)
            {
                return (null, null);
            }

            weakest = limits[f] < limits[weakest] ? f : weakest;
        }

        return (new Decibels(limits[weakest]), curve.Readings.At(weakest));
    }

    // By Markov's inequality limits that each miss once in 10/α leave a tenth of the band on the wrong side at most once in 1/α,
    // however alike their misses.
    private static Confidence Tenfold(Confidence confidence) => new(1 - ((1 - confidence.Level) * Share));

    private static BandFigure TenthPercentile(ShieldingCurve curve, double[] weights, Interval[]? ends)
    {
        if (curve.Readings.Has(ReadingKind.Unreadable))
        {
            return default;
        }

        double value = WeightedQuantile.Of(Values(curve), weights, Share);
        double? known = double.IsFinite(value) ? value : null;
        if (curve.Readings.Has(ReadingKind.Unrepeated))
        {
            return new BandFigure(curve.Readings.AreAll(ReadingKind.Unrepeated) ? known : null, null, null);
        }

        if (ends is null)
        {
            return new BandFigure(known, null, null);
        }

        double low = WeightedQuantile.Of(Array.ConvertAll(ends, e => e.Low), weights, Share);
        double high = WeightedQuantile.Of(Array.ConvertAll(ends, e => e.High), weights, Share);
        if (!double.IsFinite(low))
        {
            return default;
        }

        return double.IsFinite(high) ? new BandFigure(known, low, high) : new BandFigure(null, low, null);
    }

    private static double[] Values(ShieldingCurve curve)
    {
        double[] values = curve.Readings.ValuesDb.ToArray();
        for (int f = 0; f < values.Length; f++)
        {
            values[f] = curve.Readings.Mark(f).Kind is ReadingKind.Measured or ReadingKind.Unrepeated
                ? values[f] : double.PositiveInfinity;
        }

        return values;
    }
}
