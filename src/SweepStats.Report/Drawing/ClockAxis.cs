using System.Globalization;
using OxyPlot.Axes;
using SweepStats.Report.Findings;

namespace SweepStats.Report.Drawing;

/// <summary>A time axis with ticks at round clock times, in the zone of the first sweep: what a lab book says.</summary>
internal sealed class ClockAxis : LinearAxis
{
    private const int MostTicks = 9;
    private const double Minute = 60;
    private const double Hour = 3600;
    private const double Day = 86400;

    private static readonly double[] Steps =
    [
        1, 2, 5, 10, 15, 30, Minute, 2 * Minute, 5 * Minute, 10 * Minute, 15 * Minute, 30 * Minute,
        Hour, 2 * Hour, 3 * Hour, 6 * Hour, 12 * Hour, Day, 2 * Day, 7 * Day, 14 * Day, 28 * Day,
    ];

    private readonly DateTimeOffset _midnight;
    private readonly double _first;
    private readonly double _last;
    private readonly double _step;

    /// <param name="first">Time of the first sweep.</param>
    /// <param name="last">Time of the last.</param>
    public ClockAxis(DateTimeOffset first, DateTimeOffset last)
    {
        _midnight = new DateTimeOffset(first.Date, first.Offset);
        _first = Seconds(first);
        _last = Seconds(last);
        double span = Math.Max(_last - _first, 1);
        _step = Steps.FirstOrDefault(s => span / s <= MostTicks, Math.Ceiling(span / MostTicks / Day) * Day);
        // Room for a mark at either end, and for half of its label.
        Minimum = _first - (0.03 * span);
        Maximum = _last + (0.03 * span);
        Position = AxisPosition.Bottom;
        Title = FindingChartWords.ClockTitle(first, last.ToOffset(first.Offset));
        LabelFormatter = Label;
        Frame.Dress(this);
    }

    /// <summary>Where a time stands on the axis: seconds since the midnight before the first sweep.</summary>
    public double Seconds(DateTimeOffset time) => (time - _midnight).TotalSeconds;

    /// <inheritdoc/>
    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues,
        out IList<double> minorTickValues)
    {
        List<double> ticks = [];
        for (double tick = Math.Ceiling(_first / _step) * _step; tick <= _last; tick += _step)
        {
            ticks.Add(tick);
        }

        majorLabelValues = ticks;
        majorTickValues = ticks;
        minorTickValues = [];
    }

    private string Label(double seconds)
    {
        DateTimeOffset time = _midnight.AddSeconds(Math.Round(seconds));
        string format = _step >= Day ? "d MMM" : _last >= Day ? "d MMM HH:mm" : _step < Minute ? "HH:mm:ss" : "HH:mm";
        return time.ToString(format, CultureInfo.InvariantCulture);
    }
}
