using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Specimens;

/// <summary>
/// Lower bounds: arrows that stand on the bound and point on upwards. Neither a dot nor a line, so that nobody reads the bound as
/// a value. Arrows keep their distance; each stands on the lowest bound of its stretch.
/// </summary>
internal sealed class OpenBounds : ChartSeries
{
    private const double Closest = 10;

    /// <summary>Frequency and bound in dB.</summary>
    public required IReadOnlyList<DataPoint> Bounds { get; init; }

    /// <summary>Length of an arrow in pixels.</summary>
    public double Length { get; init; } = 24;

    /// <summary>Kind of arrow, see <see cref="BoundArrow"/>.</summary>
    public int Style { get; init; }

    /// <summary>Distance between arrows in pixels.</summary>
    public double Spacing { get; init; } = 15;

    /// <summary>Shift of the arrows in pixels, so that those of several specimens stand beside each other.</summary>
    public double Shift { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Bounds.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        List<ScreenPoint> feet = [];
        int column = int.MinValue;
        foreach (DataPoint bound in Bounds)
        {
            ScreenPoint foot = At(bound.X, Math.Max(bound.Y, YAxis.ActualMinimum));
            int own = (int)Math.Floor((foot.X - Shift) / Spacing);
            if (own == column || (feet.Count > 0 && foot.X - feet[^1].X < Closest))
            {
                // y grows downwards: the lower bound has the larger y.
                feet[^1] = foot.Y > feet[^1].Y ? foot : feet[^1];
            }
            else
            {
                feet.Add(foot);
            }

            column = own;
        }

        foreach (ScreenPoint foot in feet)
        {
            new BoundArrow(Colour, Style).Draw(rc, foot, Length);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        double half = Math.Min(box.Height / 2, 8);
        foreach (double x in new[] { box.Center.X - 9, box.Center.X + 9 })
        {
            new BoundArrow(Colour, Style).Draw(rc, new ScreenPoint(x, box.Center.Y + half), 2 * half);
        }
    }
}
