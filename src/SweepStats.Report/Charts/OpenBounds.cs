using OxyPlot;

namespace SweepStats.Report.Charts;

/// <summary>
/// Lower bounds: arrows that stand on the bound and point on upwards. Neither a dot nor a line, so that nobody reads the bound as a value. Arrows keep
/// their distance; each stands on the lowest bound of its stretch.
/// </summary>
internal sealed class OpenBounds : ChartSeries
{
    private const double Length = 24;
    private const double Foot = 4;
    private const double Head = 4;

    /// <summary>Frequency and bound in dB.</summary>
    public required IReadOnlyList<DataPoint> Bounds { get; init; }

    /// <summary>Distance between arrows in pixels.</summary>
    public double Spacing { get; init; } = 15;

    /// <summary>Shift of the arrows in pixels, so that those of several specimens stand beside each other.</summary>
    public double Shift { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        var columns = new SortedDictionary<int, ScreenPoint>();
        foreach (DataPoint bound in Bounds)
        {
            ScreenPoint foot = At(bound.X, Math.Max(bound.Y, YAxis.ActualMinimum));
            int column = (int)Math.Floor((foot.X - Shift) / Spacing);
            if (!columns.TryGetValue(column, out ScreenPoint lowest) || foot.Y > lowest.Y)
            {
                columns[column] = foot;
            }
        }

        foreach (ScreenPoint foot in columns.Values)
        {
            Arrow(rc, foot, Length);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        double half = Math.Min(box.Height / 2, 8);
        foreach (double x in new[] { box.Center.X - 9, box.Center.X + 9 })
        {
            Arrow(rc, new ScreenPoint(x, box.Center.Y + half), 2 * half);
        }
    }

    private void Arrow(IRenderContext rc, ScreenPoint foot, double length)
    {
        var tip = new ScreenPoint(foot.X, foot.Y - length);
        Stroke(rc, Colour, 1.3, null, new(foot.X - Foot, foot.Y), new(foot.X + Foot, foot.Y));
        Stroke(rc, Colour, 1.3, null, foot, tip);
        Stroke(rc, Colour, 1.3, null, new(tip.X - Head, tip.Y + Head + 1), tip, new(tip.X + Head, tip.Y + Head + 1));
    }
}
