using OxyPlot;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Drawing;

/// <summary>
/// A line over frequency; broken where a point is not a number. A point between two gaps is drawn as a dot or a dash, for a line
/// of one point is invisible.
/// </summary>
internal sealed class Trace : ChartSeries
{
    private const double MarkerSize = 4;

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

    /// <summary>Least distance between markers in pixels; 0 for one at every point.</summary>
    public double MarkerSpacing { get; init; } = 96;

    /// <summary>
    /// Arrow that the same specimen's bounds have, shown in the legend beside the line; null where it has none.
    /// </summary>
    public int? ArrowStyle { get; init; }

    /// <summary>Whether lone points are dots, as readings are; else short lines, as a requirement is.</summary>
    public bool LoneDots { get; init; }

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
                Lone(rc, run[0]);
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
            rc.DrawMarkers(markers, Marker, null, [MarkerSize], OxyColors.White, Colour, 1.4,
                EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }

    private void Lone(IRenderContext rc, ScreenPoint at)
    {
        if (LoneDots)
        {
            MarkerType marker = Marker == MarkerType.None ? MarkerType.Circle : Marker;
            rc.DrawMarker(at, marker, null, 3, Hollow ? OxyColors.White : Colour, Colour, 1.4,
                EdgeRenderingMode.PreferGeometricAccuracy);
        }
        else
        {
            // In a sweep of many points a neighbour's place is not ours; in a sweep of one there is all the room.
            double reach = Points.Count == 1 ? 60 : 2;
            Stroke(rc, Colour, Thickness, Dash, new(at.X - reach, at.Y), new(at.X + reach, at.Y));
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        double right = ArrowStyle is null ? box.Right : box.Right - 12;
        Stroke(rc, Colour, Thickness, Dash, new ScreenPoint(box.Left, box.Center.Y), new ScreenPoint(right, box.Center.Y));
        if (ArrowStyle is { } style)
        {
            new BoundArrow(Colour, style).Draw(rc, new ScreenPoint(box.Right - 4, box.Center.Y + 7), 14);
        }

        if (Marker != MarkerType.None)
        {
            rc.DrawMarker(new ScreenPoint((box.Left + right) / 2, box.Center.Y), Marker, null, MarkerSize, OxyColors.White,
                Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
        }
    }
}
