using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Single marks without a line between them.</summary>
internal sealed class PointMarks : ChartSeries
{
    /// <summary>Where they stand.</summary>
    public required IReadOnlyList<DataPoint> Points { get; init; }

    /// <summary>Marker; a tick, where none, that stands upright.</summary>
    public required MarkerType Marker { get; init; }

    /// <summary>Half its width in pixels.</summary>
    public double Size { get; init; } = 4;

    /// <summary>Whether it is hollow.</summary>
    public bool Hollow { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Points.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        foreach (DataPoint point in Points)
        {
            Mark(rc, At(point.X, point.Y));
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) => Mark(rc, box.Center);

    private void Mark(IRenderContext rc, ScreenPoint at)
    {
        if (Marker == MarkerType.None)
        {
            Stroke(rc, Colour, 2, null, new(at.X, at.Y - Size), new(at.X, at.Y + Size));
        }
        else
        {
            rc.DrawMarker(at, Marker, null, Size, Hollow ? OxyColors.Undefined : Colour, Colour, 1.4,
                EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }
}
