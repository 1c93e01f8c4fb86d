using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// A shaded band between two edges with thin outlines, so that it also shows in grey; a lone frequency is drawn as a bar.
/// </summary>
internal sealed class IntervalBand : ChartSeries
{
    private const double CapHalfWidth = 4;

    /// <summary>The band, in grid order.</summary>
    public required IReadOnlyList<Slice> Slices { get; init; }

    /// <summary>Strength of the shading, 0 to 255.</summary>
    public byte Strength { get; init; } = 46;

    /// <summary>Whether a lone frequency is drawn as a bar; among many specimens bars hide each other.</summary>
    public bool LoneBars { get; init; } = true;

    /// <summary>Whether edges are drawn.</summary>
    public bool Outlined { get; init; } = true;

    protected override void Draw(IRenderContext rc)
    {
        foreach ((int from, int to) in Runs(Slices.Count, i => !double.IsNaN(Slices[i].Low)))
        {
            List<ScreenPoint> upper = [];
            List<ScreenPoint> lower = [];
            for (int i = from; i < to; i++)
            {
                // An edge far outside is drawn at the frame: huge coordinates confuse viewers.
                upper.Add(At(Slices[i].X, Math.Clamp(Slices[i].High, YAxis.ActualMinimum, YAxis.ActualMaximum)));
                lower.Add(At(Slices[i].X, Math.Clamp(Slices[i].Low, YAxis.ActualMinimum, YAxis.ActualMaximum)));
            }

            if (to - from == 1 && LoneBars)
            {
                Bar(rc, upper[0], lower[0]);
            }
            else if (to - from > 1)
            {
                Fill(rc, Decimation.Edge(upper, upper: true), Decimation.Edge(lower, upper: false));
            }
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        double half = Math.Min(box.Height / 2, 6);
        Fill(rc, [new(box.Left, box.Center.Y - half), new(box.Right, box.Center.Y - half)],
            [new(box.Left, box.Center.Y + half), new(box.Right, box.Center.Y + half)]);
    }

    private void Fill(IRenderContext rc, List<ScreenPoint> upper, List<ScreenPoint> lower)
    {
        List<ScreenPoint> outline = [.. upper];
        for (int i = lower.Count - 1; i >= 0; i--)
        {
            outline.Add(lower[i]);
        }

        rc.DrawPolygon(
            outline, Ink.Veil(Colour, Strength), OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy, null,
            LineJoin.Miter);
        if (Outlined)
        {
            Stroke(rc, Ink.Veil(Colour, 150), 0.7, null, upper);
            Stroke(rc, Ink.Veil(Colour, 150), 0.7, null, lower);
        }
    }

    private void Bar(IRenderContext rc, ScreenPoint top, ScreenPoint bottom)
    {
        Stroke(rc, Colour, 1.2, null, top, bottom);
        foreach (ScreenPoint end in new[] { top, bottom })
        {
            Stroke(rc, Colour, 1.2, null, new(end.X - CapHalfWidth, end.Y), new(end.X + CapHalfWidth, end.Y));
        }
    }
}
