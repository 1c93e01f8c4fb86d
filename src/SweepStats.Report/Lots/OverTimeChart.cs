using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Findings;

namespace SweepStats.Report.Lots;

/// <summary>A control chart: lots or specimens in the order of time, each with its own limits.</summary>
internal static class OverTimeChart
{
    private const double RoomAbove = 1.08;
    private const double LeastSpanDb = 1;
    private const int Crowded = 60;

    /// <summary>A chart for each figure that was followed over time.</summary>
    public static IEnumerable<Chart> All(ImmutableArray<ControlChart> charts, FileNames names) =>
        charts.Select(chart => Of(chart, names.Next("over-time", LotChartWords.OverTimeFile(chart.Figure))));

    private static Chart Of(ControlChart chart, string name)
    {
        ControlPoint[] points = [.. chart.Points];
        LabelledAxis places =
            ThinnedLabels.Axis(LotChartWords.OverTimeAxis(chart), [.. points.Select(p => p.Label)], i => points[i].Outside);
        string title = LotChartWords.OverTimeTitle(chart);
        PlotModel model = Frame.Model(title, LotChartWords.OverTimeSubtitle(chart), places, Values(chart)).With([
            new Trace
            {
                Colour = Ink.Grey,
                Points = Frame.Across(places, chart.CentreDb),
                Thickness = 1,
                Title = LotChartWords.CentreLegend,
            },
            new StepLimits
            {
                Colour = Ink.Red,
                Limits = [.. points.Select((p, i) => new Slice(i, p.Low, p.High))],
                Title = LotChartWords.ControlLimitLegend,
            },
            .. Marks(chart),
        ]);
        return new Chart(name, ChartKind.OverTime, title, LotChartWords.OverTimeDescription(chart), model, 420);
    }

    private static ChartSeries[] Marks(ControlChart chart)
    {
        DataPoint[] values = [.. chart.Points.Select((p, i) => new DataPoint(i, p.Value))];
        return
        [
            new OffsetMarks
            {
                Colour = Ink.Blue,
                Groups = [values],
                Marker = MarkerType.Circle,
                Size = values.Length > Crowded ? 2.6 : 4,
                Title = LotChartWords.OverTimeLegend(chart.Figure),
            },
            new PointMarks
            {
                Colour = Ink.Red,
                Points = [.. values.Where((_, i) => chart.Points[i].Outside)],
                Marker = MarkerType.Square,
                Size = 7,
                Hollow = true,
                Title = LotChartWords.OutsideLegend,
            },
        ];
    }

    private static LinearAxis Values(ControlChart chart)
    {
        bool fromZero = chart.Figure is ControlFigure.LotDeviation or ControlFigure.MovingRange;
        IEnumerable<double> seen = chart.Points.SelectMany(p => new[] { p.Value, p.Low, p.High });
        string title = LotChartWords.OverTimeFigure(chart.Figure);
        return fromZero ? ZeroScale.Axis(title, seen.Max() * RoomAbove) : DecibelScale.Axis(title, seen, leastSpan: LeastSpanDb);
    }
}
