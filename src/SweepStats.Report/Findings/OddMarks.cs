using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Findings;

/// <summary>Rings round sweeps that differ from their repeats, with their names where there is room.</summary>
internal sealed class OddMarks : ChartSeries
{
    private const double Radius = 9;
    private const double Thickness = 1.8;
    private const double Distance = 12;
    private const double MarkSize = 4;

    /// <summary>The sweeps: where, and their names.</summary>
    public required IReadOnlyList<(DataPoint At, string Name)> Sweeps { get; init; }

    /// <summary>All sweeps of the chart: names keep clear of their marks.</summary>
    public required IReadOnlyList<DataPoint> Others { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Sweeps.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        List<OxyRect> taken =
        [
            .. Sweeps.Select(s => Around(At(s.At.X, s.At.Y), Radius)), .. Others.Select(p => Around(At(p.X, p.Y), MarkSize)),
            new(PlotModel.PlotArea.Left, YAxis.Transform(0), PlotModel.PlotArea.Width, 1),
        ];
        foreach ((DataPoint at, string name) in Sweeps)
        {
            ScreenPoint centre = At(at.X, at.Y);
            Ring(rc, centre);
            Name(rc, centre, name, taken);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) => Ring(rc, box.Center);

    private void Ring(IRenderContext rc, ScreenPoint centre) =>
        rc.DrawMarker(centre, MarkerType.Circle, null, Radius, OxyColors.Undefined, Colour, Thickness,
            EdgeRenderingMode.PreferGeometricAccuracy);

    /// <summary>
    /// Beside the ring, above or below, where nothing stands yet; a name without room is left out: findings name every sweep.
    /// </summary>
    private void Name(IRenderContext rc, ScreenPoint centre, string name, List<OxyRect> taken)
    {
        // Not measured with the drawer's own type, so that SVG and PNG choose alike.
        OxySize size = new TextMeasurer().MeasureText(name, null, ActualFontSize, ActualFontWeight);
        OxyRect area = PlotModel.PlotArea;
        OxyRect[] free = [.. Beside(centre, size).Where(box => Holds(area, box) && !taken.Exists(t => Overlap(t, box)))];
        if (free is [var box, ..])
        {
            taken.Add(box);
            rc.DrawText(new ScreenPoint(box.Left, box.Center.Y), name, Colour, ActualFont, ActualFontSize, ActualFontWeight,
                0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }

    private static IEnumerable<OxyRect> Beside(ScreenPoint centre, OxySize size)
    {
        double middle = centre.Y - (size.Height / 2);
        return
        [
            new(centre.X + Distance, middle, size.Width, size.Height),
            new(centre.X - Distance - size.Width, middle, size.Width, size.Height),
            .. from away in new[] { Distance, Distance + size.Height, Distance + (2 * size.Height) }
               from top in new[] { centre.Y - away - size.Height, centre.Y + away }
               from left in new[] { centre.X - (size.Width / 2), centre.X, centre.X - size.Width }
               select new OxyRect(left, top, size.Width, size.Height),
        ];
    }

    private static bool Holds(OxyRect area, OxyRect box) =>
        box.Left >= area.Left && box.Right <= area.Right && box.Top >= area.Top && box.Bottom <= area.Bottom;

    private static OxyRect Around(ScreenPoint centre, double half) => new(centre.X - half, centre.Y - half, 2 * half, 2 * half);

    private static bool Overlap(OxyRect a, OxyRect b) =>
        a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;
}
