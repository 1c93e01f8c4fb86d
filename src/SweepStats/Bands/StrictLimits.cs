using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>
/// Limits at every frequency for the figures over the band that need them stricter than the interval; frequency by frequency, so
/// that each reading is taken apart once.
/// </summary>
internal sealed class StrictLimits
{
    /// <param name="curve">The specimen.</param>
    /// <param name="percentile">Level of the limits behind the tenth percentile.</param>
    /// <param name="rule">What is asked; null where nothing is.</param>
    /// <param name="share">Level of those behind the share that meets; null where nothing is asked.</param>
    public StrictLimits(ShieldingCurve curve, Confidence percentile, DecisionRule? rule, Confidence? share)
    {
        if (curve.Levels is not { } levels)
        {
            return;
        }

        ImmutableArray<ReadingEstimator> ofPercentile = levels.Estimators(percentile);
        ImmutableArray<ReadingEstimator> ofShare = share is { } level ? levels.Estimators(level) : [];
        OfPercentile = new Interval[curve.Readings.Length];
        OfShare = share is null ? null : new Interval[curve.Readings.Length];
        var ends = new CurveEnds(curve, plainReference: true);
        for (int f = 0; f < OfPercentile.Length; f++)
        {
            OfPercentile[f] = ends.At(f, ofPercentile);
            if (OfShare is not null)
            {
                OfShare[f] = Share(f);
            }
        }

        // What is shown to meet is not shown to fail and needs no upper limit; where nothing is asked no limit is needed.
        Interval Share(int f)
        {
            double wanted = rule!.Requirement.At(curve.Readings.At(f))?.Value ?? double.NegativeInfinity;
            double low = double.IsFinite(wanted) ? ends.Low(f, ofShare) : double.NegativeInfinity;
            return new Interval(low, low >= wanted ? double.PositiveInfinity : ends.High(f, ofShare));
        }
    }

    /// <summary>Behind the tenth percentile; null where the levels are not known.</summary>
    public Interval[]? OfPercentile { get; }

    /// <summary>Behind the share that meets; null where nothing is asked.</summary>
    public Interval[]? OfShare { get; }
}
