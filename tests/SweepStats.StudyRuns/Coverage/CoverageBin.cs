using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>Counts of one bin while the study runs.</summary>
internal sealed class CoverageBin(double snrDb)
{
    private int _trials;
    private int _held;
    private int _tooMuch;
    private int _bounds;
    private int _withinRange;
    private int _plainHeld;
    private int _twoSided;
    private double _widthRatios;

    /// <summary>Counts a reading against its true shielding in dB, beside the interval of the plain difference.</summary>
    public void Add(ShieldingReading reading, double truth, Interval plain)
    {
        Interval claim = reading switch
        {
            ShieldingReading.Measured m => new Interval(m.Shielding.Low.Value, m.Shielding.High.Value),
            ShieldingReading.AtLeast b => new Interval(b.Bound.Value, double.PositiveInfinity),
            _ => new Interval(double.NegativeInfinity, double.PositiveInfinity),
        };
        _trials++;
        _held += claim.Contains(truth) ? 1 : 0;
        _tooMuch += claim.Low > truth ? 1 : 0;
        _withinRange += reading.Evidence.DynamicRange?.Value >= truth ? 1 : 0;
        _plainHeld += plain.Contains(truth) ? 1 : 0;
        if (reading is ShieldingReading.Measured)
        {
            _twoSided++;
            _widthRatios += claim.Width / plain.Width;
        }
        else
        {
            _bounds++;
        }
    }

    /// <summary>The counts so far, and the mean ratio of widths where both ends are known; NaN where none are.</summary>
    public CoverageRow Row() => new()
    {
        SnrDb = snrDb,
        Trials = _trials,
        Held = _held,
        ClaimedTooMuch = _tooMuch,
        Bounds = _bounds,
        WithinRange = _withinRange,
        PlainHeld = _plainHeld,
        WidthRatio = _twoSided > 0 ? _widthRatios / _twoSided : double.NaN,
    };
}
