using OxyPlot;
using OxyPlot.Series;
using OxyPlot.SkiaSharp;

namespace SweepStats.Report.Drawing;

/// <summary>
/// What the house's own series share: axes are set by the chart, never by the data, and a part of the data may be missing.
/// </summary>
internal abstract class ChartSeries : XYAxisSeries
{
    /// <summary>Colour of the drawing.</summary>
    public required OxyColor Colour { get; init; }

    /// <summary>Whether there is nothing to draw, so that no legend may speak of it.</summary>
    public virtual bool IsEmpty => false;

    /// <inheritdoc/>
    public override void Render(IRenderContext rc) => Draw(rc);

    /// <summary>The plot area with room for a mark that stands on its edge: half an arrow would be no arrow.</summary>
    public override OxyRect GetClippingRect() => base.GetClippingRect().Inflate(6, 0);

    /// <inheritdoc/>
    public override void RenderLegend(IRenderContext rc, OxyRect legendBox) => DrawSample(rc, legendBox);

    protected abstract void Draw(IRenderContext rc);

    protected abstract void DrawSample(IRenderContext rc, OxyRect box);

    protected ScreenPoint At(double x, double y) => this.Transform(x, y);

    protected double Top => YAxis.Transform(YAxis.ActualMaximum);

    protected double Bottom => YAxis.Transform(YAxis.ActualMinimum);

    /// <summary>A thin line drawn where it is, not rounded to pixels, so that PNG and SVG agree.</summary>
    protected static void Stroke(IRenderContext rc, OxyColor colour, double thickness, double[]? dash,
        params IList<ScreenPoint> points)
    {
        // The PNG drawer counts dashes in line widths of its own dots, the SVG drawer in pixels.
        double[]? drawn = rc is SkiaRenderContext png && dash is not null
            ? [.. dash.Select(d => d / (thickness * png.DpiScale))] : dash;
        rc.DrawLine(points, colour, thickness, EdgeRenderingMode.PreferGeometricAccuracy, drawn, LineJoin.Round);
    }

    /// <summary>Stretches without a gap.</summary>
    protected static IEnumerable<(int From, int To)> Runs(int count, Func<int, bool> there)
    {
        int from = -1;
        for (int i = 0; i <= count; i++)
        {
            bool inside = i < count && there(i);
            if (inside && from < 0)
            {
                from = i;
            }
            else if (!inside && from >= 0)
            {
                yield return (from, i);
                from = -1;
            }
        }
    }
}
