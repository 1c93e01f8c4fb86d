using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>
/// Ends of the intervals of a curve, for any confidence: the one way to limits of a curve, which knows what each reading is. For
/// one thread.
/// </summary>
/// <remarks>
/// Nothing is claimed of an unreadable frequency, and nothing from above where only a bound is known. A reading is taken apart
/// once for all limits that are asked of it in turn.
/// </remarks>
internal sealed class CurveEnds
{
    private readonly ShieldingCurve _curve;
    private readonly bool _plainReference;
    private ReadingBasis[] _bases = [];
    private int _at = -1;
    private ReadingLevels _levels;

    // The levels are taken as they are, without a floor behind them.
    private bool _plain;

    /// <param name="curve">The curve.</param>
    /// <param name="plainReference">
    /// The noise is not taken out where the reference hardly rises over the floor either: figures over a band take such readings
    /// as they come, which bounds them lower.
    /// </param>
    public CurveEnds(ShieldingCurve curve, bool plainReference = false)
    {
        (_curve, _plainReference) = (curve, plainReference);
    }

    /// <summary>Both ends at a frequency.</summary>
    /// <param name="f">Place of the frequency.</param>
    /// <param name="estimators">Those of the confidence that is wanted, from <see cref="ShieldingCurve.Levels"/>.</param>
    public Interval At(int f, ImmutableArray<ReadingEstimator> estimators)
    {
        if (!BoundedAbove(f, estimators))
        {
            return new Interval(Low(f, estimators), double.PositiveInfinity);
        }

        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (int i = 0; i < estimators.Length; i++)
        {
            ShieldingLimits limits = estimators[i].TwoSided(_bases[i]);
            (low, high) = (Math.Min(low, limits.LowDb), Math.Max(high, limits.HighDb));
        }

        return new Interval(low, high);
    }

    /// <summary>Lower end at a frequency; −∞ where nothing can be claimed.</summary>
    public double Low(int f, ImmutableArray<ReadingEstimator> estimators)
    {
        if (!Readable(f))
        {
            return double.NegativeInfinity;
        }

        Take(f, estimators);
        double low = double.PositiveInfinity;
        for (int i = 0; i < estimators.Length; i++)
        {
            low = Math.Min(low,
                _plain ? WithoutFloor.Limits(_levels, estimators[i].Confidence).LowDb : estimators[i].Low(_bases[i]));
        }

        return low;
    }

    /// <summary>Upper end at a frequency; +∞ where only a bound is known.</summary>
    public double High(int f, ImmutableArray<ReadingEstimator> estimators)
    {
        if (!BoundedAbove(f, estimators))
        {
            return double.PositiveInfinity;
        }

        double high = double.NegativeInfinity;
        for (int i = 0; i < estimators.Length; i++)
        {
            high = Math.Max(high, estimators[i].High(_bases[i]));
        }

        return high;
    }

    // Only where the noise is taken out of a measured reading can there be an upper end.
    private bool BoundedAbove(int f, ImmutableArray<ReadingEstimator> estimators)
    {
        if (_curve.Readings.Mark(f).Kind != ReadingKind.Measured || !Readable(f))
        {
            return false;
        }

        Take(f, estimators);
        return !_plain;
    }

    private bool Readable(int f) => _curve.Levels is not null && _curve.Readings.Mark(f).Kind != ReadingKind.Unreadable;

    private void Take(int f, ImmutableArray<ReadingEstimator> estimators)
    {
        if (_at == f)
        {
            return;
        }

        // What transmits is no noise, and without a floor nobody knows the noise: neither is taken out of the reading, and no
        // upper end is left.
        ReadingMark mark = _curve.Readings.Mark(f);
        _plain = !_curve.Levels!.FloorKnown || mark.Ambient || (_plainReference && mark.ReferenceInFloor);
        _levels = _curve.Levels[f];
        _bases = _bases.Length == estimators.Length ? _bases : new ReadingBasis[estimators.Length];
        for (int i = 0; i < estimators.Length && !_plain; i++)
        {
            _bases[i] = estimators[i].Basis(_levels);
        }

        _at = f;
    }
}
