using OxyPlot.Axes;
using SweepStats.Quantities;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>The axis of a sweep of one point: room on both sides, and one label.</summary>
internal sealed class OneFrequencyAxis : LinearAxis
{
    private readonly double _only;

    /// <summary>An axis about one frequency in Hz, a tenth of it free on either side.</summary>
    public OneFrequencyAxis(double only)
    {
        double room = only > 0 ? only / 10 : 1;
        _only = only;
        Minimum = only - room;
        Maximum = only + room;
        LabelFormatter = hertz => PrintedFrequency.Frequency(new Hertz(hertz));
    }

    /// <inheritdoc/>
    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues,
        out IList<double> minorTickValues)
    {
        majorLabelValues = [_only];
        majorTickValues = [_only];
        minorTickValues = [];
    }
}
