using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Receivers;

/// <summary>Stations at their margins with two standard uncertainties to either side; an arrow points to where the shielding
/// lies.</summary>
internal sealed class MarginMarks : ChartSeries
{
    private const double Length = 20, Head = 4, Size = 4;

    /// <summary>The stations drawn, all of one kind.</summary>
    public required IReadOnlyList<MarginRow> Rows { get; init; }

    /// <summary>Whether marks are hollow and arrows point down the scale: still heard.</summary>
    public required bool Hollow { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        foreach (MarginRow row in Rows)
        {
            Stroke(rc, Ink.Veil(Colour, 140), 3, null, At(row.Low, row.Row), At(row.High, row.Row));
            Mark(rc, At(row.Observation.MarginDb, row.Row));
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Mark(rc, new ScreenPoint(Hollow ? box.Right - Size : box.Left + Size, box.Center.Y));

    private void Mark(IRenderContext rc, ScreenPoint at)
    {
        double side = Hollow ? -1 : 1;
        var tip = new ScreenPoint(at.X + (side * Length), at.Y);
        Stroke(rc, Colour, 1.3, null, at, tip);
        Stroke(rc, Colour, 1.3, null, new(tip.X - (side * Head), tip.Y - Head), tip, new(tip.X - (side * Head), tip.Y + Head));
        OxyColor fill = Hollow ? OxyColors.White : Colour;
        rc.DrawMarker(at, MarkerType.Circle, null, Size, fill, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);
    }
}
