using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Findings;

/// <summary>One mark a sweep, those of a group joined by a thin line.</summary>
internal sealed class OffsetMarks : ChartSeries
{
    /// <summary>The groups, each from left to right.</summary>
    public required IReadOnlyList<IReadOnlyList<DataPoint>> Groups { get; init; }

    /// <summary>Marker.</summary>
    public required MarkerType Marker { get; init; }

    /// <summary>Half its width in pixels.</summary>
    public required double Size { get; init; }

    /// <summary>Whether it is hollow.</summary>
    public bool Hollow { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        foreach (IReadOnlyList<DataPoint> group in Groups)
        {
            ScreenPoint[] points = [.. group.Select(p => At(p.X, p.Y))];
            Stroke(rc, Ink.Veil(Colour, 90), 0.8, null, points);
            foreach (ScreenPoint point in points)
            {
                Mark(rc, point, Size);
            }
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) => Mark(rc, box.Center, Math.Max(Size, 4));

    private void Mark(IRenderContext rc, ScreenPoint at, double size) =>
        rc.DrawMarker(at, Marker, null, size, Hollow ? OxyColors.White : Colour, Colour, 1.2,
            EdgeRenderingMode.PreferGeometricAccuracy);
}
