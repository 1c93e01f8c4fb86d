using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Every second group on a pale stripe, so that groups side by side can be told apart.</summary>
internal sealed class GroupStripes : ChartSeries
{
    private const double Beyond = 0.5;

    /// <summary>First and last place of each group.</summary>
    public required IReadOnlyList<(double From, double To)> Groups { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        foreach ((double from, double to) in Groups.Where((_, i) => i % 2 == 0))
        {
            var box = new OxyRect(new ScreenPoint(XAxis.Transform(from - Beyond), Top),
                new ScreenPoint(XAxis.Transform(to + Beyond), Bottom));
            rc.DrawRectangle(box, Colour, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
    }
}
