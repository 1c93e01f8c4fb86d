using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Every second group of rows on a pale stripe, so that groups can be told apart.</summary>
internal sealed class RowStripes : ChartSeries
{
    private const double Beyond = 0.5;

    /// <summary>First and last row of each group.</summary>
    public required IReadOnlyList<(double From, double To)> Groups { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        double left = XAxis.Transform(XAxis.ActualMinimum), right = XAxis.Transform(XAxis.ActualMaximum);
        foreach ((double from, double to) in Groups.Where((_, i) => i % 2 == 0))
        {
            var box = new OxyRect(new ScreenPoint(left, YAxis.Transform(from - Beyond)),
                new ScreenPoint(right, YAxis.Transform(to + Beyond)));
            rc.DrawRectangle(box, Colour, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
    }
}
