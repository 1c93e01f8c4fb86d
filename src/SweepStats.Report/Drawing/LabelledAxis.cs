using OxyPlot;
using OxyPlot.Axes;

namespace SweepStats.Report.Drawing;

/// <summary>An axis of places with names: ticks where a name stands and nowhere else.</summary>
internal sealed class LabelledAxis : LinearAxis
{
    private readonly List<double> _places;

    /// <param name="position">Where the axis stands.</param>
    /// <param name="labels">Names and their places, each place once.</param>
    public LabelledAxis(AxisPosition position, IEnumerable<PlaceLabel> labels)
    {
        Dictionary<double, string> named = labels.ToDictionary(l => l.Place, l => l.Label);
        _places = [.. named.Keys];
        Position = position;
        LabelFormatter = place => named.GetValueOrDefault(place, string.Empty);
        Frame.Dress(this);
        MajorGridlineStyle = LineStyle.None;
        MajorTickSize = 0;
    }

    /// <inheritdoc/>
    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues,
        out IList<double> minorTickValues)
    {
        majorLabelValues = _places;
        majorTickValues = _places;
        minorTickValues = [];
    }
}
