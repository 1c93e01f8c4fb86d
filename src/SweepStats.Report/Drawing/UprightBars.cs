using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Upright bars from zero, up or down.</summary>
internal sealed class UprightBars : ChartSeries
{
    private const double Share = 0.34;
    private const double WidestHalf = 13;
    private const double SampleHalf = 6;

    /// <summary>Places with their values.</summary>
    public required IReadOnlyList<DataPoint> Bars { get; init; }

    /// <summary>Strength of the filling, 0 to 255: a grey print tells bars by it.</summary>
    public required byte Strength { get; init; }

    /// <summary>A marker at the end of each bar.</summary>
    public MarkerType EndMarker { get; init; } = MarkerType.None;

    protected override void Draw(IRenderContext rc)
    {
        double half = Math.Min(WidestHalf, Share * (XAxis.Transform(1) - XAxis.Transform(0)));
        foreach (DataPoint bar in Bars)
        {
            Bar(rc, At(bar.X, 0), At(bar.X, bar.Y), half);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Bar(rc, new(box.Center.X, box.Center.Y + SampleHalf), new(box.Center.X, box.Center.Y - SampleHalf), SampleHalf);

    private void Bar(IRenderContext rc, ScreenPoint zero, ScreenPoint end, double half)
    {
        var box = new OxyRect(new ScreenPoint(zero.X - half, zero.Y), new ScreenPoint(end.X + half, end.Y));
        rc.DrawRectangle(box, Ink.Veil(Colour, Strength), Colour, 1, EdgeRenderingMode.PreferGeometricAccuracy);
        if (EndMarker != MarkerType.None)
        {
            rc.DrawMarker(end, EndMarker, null, 4, OxyColors.White, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }
}
