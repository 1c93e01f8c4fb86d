using OxyPlot;

namespace SweepStats.Report.Charts;

/// <summary>A line over frequency; broken where a point is not a number. A point between two gaps is drawn as a dot, for a line of one point is invisible.</summary>
internal sealed class Trace : ChartSeries
{
    private const double MarkerSize = 4;
    private const double MarkerSpacing = 96;

    /// <summary>The points, in grid order.</summary>
    public required IReadOnlyList<DataPoint> Points { get; init; }

    /// <summary>Dash in pixels; null for a full line.</summary>
    public double[]? Dash { get; init; }

    /// <summary>Width in pixels.</summary>
    public double Thickness { get; init; } = 1.6;

    /// <summary>Marker along the line.</summary>
    public MarkerType Marker { get; init; } = MarkerType.None;

    /// <summary>Where the first marker stands, in pixels, so that neighbours do not hide each other.</summary>
    public double MarkerStart { get; init; }

    /// <summary>Whether lone dots are hollow: a value without an interval must not look like one with.</summary>
    public bool Hollow { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        List<ScreenPoint> markers = [];
        double next = XAxis.Transform(XAxis.ActualMinimum) + MarkerStart;
        foreach ((int from, int to) in Runs(Points.Count, i => double.IsFinite(Points[i].Y)))
        {
            List<ScreenPoint> run = [];
            for (int i = from; i < to; i++)
            {
                run.Add(At(Points[i].X, Points[i].Y));
            }

            if (run.Count == 1)
            {
                rc.DrawMarker(run[0], Marker == MarkerType.None ? MarkerType.Circle : Marker, null, 3, Hollow ? OxyColors.White : Colour, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
                continue;
            }

            foreach (ScreenPoint p in run.Where(p => p.X >= next))
            {
                markers.Add(p);
                next = p.X + MarkerSpacing;
            }

            Stroke(rc, Colour, Thickness, Dash, Decimation.Line(run));
        }

        if (Marker != MarkerType.None)
        {
            rc.DrawMarkers(markers, Marker, null, [MarkerSize], OxyColors.White, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        Stroke(rc, Colour, Thickness, Dash, new ScreenPoint(box.Left, box.Center.Y), new ScreenPoint(box.Right, box.Center.Y));
        if (Marker != MarkerType.None)
        {
            rc.DrawMarker(box.Center, Marker, null, MarkerSize, OxyColors.White, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }
}
