using System.Globalization;
using OxyPlot.Axes;
using SweepStats.Quantities;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>
/// A logarithmic frequency axis with ticks where an engineer looks for them: 1, 2, 5 of each decade and both ends of the sweep.
/// </summary>
internal sealed class LogFrequencyAxis : LogarithmicAxis
{
    private const double LabelRoom = 0.075;

    private readonly double _start;
    private readonly double _stop;

    /// <summary>An axis from start to stop in Hz, the start above 0 and below the stop.</summary>
    public LogFrequencyAxis(double start, double stop)
    {
        _start = start;
        _stop = stop;
        Minimum = start;
        Maximum = stop;
        LabelFormatter = hertz => PrintedFrequency.Frequency(new Hertz(hertz));
    }

    /// <inheritdoc/>
    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues,
        out IList<double> minorTickValues)
    {
        double decades = Math.Log10(_stop / _start);
        double[] steps = decades <= 1.2 ? [1, 2, 3, 5, 7] : decades <= 3.2 ? [1, 2, 5] : decades <= 5.5 ? [1, 3] : [1];
        List<double> labels = [.. Decades(steps).Where(f => Distance(f, _start) > LabelRoom && Distance(f, _stop) > LabelRoom)];
        labels.Insert(0, _start);
        labels.Add(_stop);
        majorLabelValues = labels;
        majorTickValues = labels;
        minorTickValues = [.. Decades([1, 2, 3, 4, 5, 6, 7, 8, 9])];
    }

    private double Distance(double a, double b) => Math.Abs(Math.Log(a / b)) / Math.Log(_stop / _start);

    private IEnumerable<double> Decades(double[] steps)
    {
        for (int exponent = (int)Math.Floor(Math.Log10(_start)); exponent <= Math.Ceiling(Math.Log10(_stop)); exponent++)
        {
            foreach (double step in steps)
            {
                // Parsed, not multiplied: 2e7 and not 20000000.000000004.
                double f = double.Parse(string.Create(CultureInfo.InvariantCulture, $"{step}e{exponent}"),
                    CultureInfo.InvariantCulture);
                if (f >= _start && f <= _stop)
                {
                    yield return f;
                }
            }
        }
    }
}
