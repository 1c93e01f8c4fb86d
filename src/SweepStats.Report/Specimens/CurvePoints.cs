using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>The readings of one specimen sorted by what may be drawn of them: only a measured reading has a value.</summary>
internal sealed class CurvePoints
{
    /// <summary>
    /// An upper limit further above its estimate than this is not shown whole: it would squeeze everything else.
    /// </summary>
    private const double TallestLimit = 12;

    private readonly List<DataPoint> _estimate = [];
    private readonly List<Slice> _interval = [];
    private readonly List<DataPoint> _bounds = [];
    private readonly List<DataPoint> _unrepeated = [];
    private readonly List<double> _unreadable = [];

    /// <summary>Sorts the readings of a curve; estimates, intervals and differences have a place at each frequency.</summary>
    public CurvePoints(ShieldingCurve curve)
    {
        foreach (ShieldingReading reading in curve.Readings)
        {
            Add(reading);
        }
    }

    /// <summary>Estimates; not a number where there is none.</summary>
    public IReadOnlyList<DataPoint> Estimate => _estimate;

    /// <summary>Their intervals.</summary>
    public IReadOnlyList<Slice> Interval => _interval;

    /// <summary>Lower bounds, only where there is nothing else.</summary>
    public IReadOnlyList<DataPoint> Bounds => _bounds;

    /// <summary>Differences without interval; not a number elsewhere.</summary>
    public IReadOnlyList<DataPoint> Unrepeated => _unrepeated;

    /// <summary>Frequencies at which nothing can be claimed.</summary>
    public IReadOnlyList<double> Unreadable => _unreadable;

    /// <summary>Whether one frequency at least has an estimate.</summary>
    public bool HasEstimates => _estimate.Any(p => double.IsFinite(p.Y));

    /// <summary>Whether one frequency at least has a difference without interval.</summary>
    public bool HasUnrepeated => _unrepeated.Any(p => double.IsFinite(p.Y));

    /// <summary>dB values that an axis must hold.</summary>
    public IEnumerable<double> Seen =>
        _estimate.Select(p => p.Y)
            .Concat(_interval.Select(s => s.Low))
            .Concat(_interval.Zip(_estimate, (s, p) => Math.Min(s.High, p.Y + TallestLimit)))
            .Concat(_bounds.Select(p => p.Y))
            .Concat(_unrepeated.Select(p => p.Y));

    private void Add(ShieldingReading reading)
    {
        double x = reading.Evidence.At.Value;
        (double value, Slice interval, double unrepeated) = (double.NaN, new Slice(x, double.NaN, double.NaN), double.NaN);
        switch (reading)
        {
            case ShieldingReading.Measured measured:
                value = measured.Shielding.Value.Value;
                interval = new Slice(x, measured.Shielding.Low.Value, measured.Shielding.High.Value);
                break;
            case ShieldingReading.AtLeast bound:
                _bounds.Add(new DataPoint(x, bound.Bound.Value));
                break;
            case ShieldingReading.Unrepeated single:
                unrepeated = single.Indication.Value;
                break;
            default:
                _unreadable.Add(x);
                break;
        }

        _estimate.Add(new DataPoint(x, value));
        _interval.Add(interval);
        _unrepeated.Add(new DataPoint(x, unrepeated));
    }
}
