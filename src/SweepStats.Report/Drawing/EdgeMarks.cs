using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Marks at the frame for places on the axis about which something must be known: a transmitter (from the top) or nothing to
/// claim (at the bottom).
/// </summary>
internal sealed class EdgeMarks : ChartSeries
{
    private const double Size = 5;

    /// <summary>Places on the axis: frequencies in Hz, or source levels in dBm.</summary>
    public required IReadOnlyList<double> Places { get; init; }

    /// <summary>Whether the marks hang from the top with a line down, or stand at the bottom as crosses.</summary>
    public required bool FromTop { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Places.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        int last = int.MinValue;
        foreach (double place in Places)
        {
            double x = XAxis.Transform(place);
            // Neighbours within a mark's width would melt into a blot.
            if ((int)Math.Floor(x / (2 * Size)) == last)
            {
                continue;
            }

            last = (int)Math.Floor(x / (2 * Size));
            if (FromTop)
            {
                Stroke(rc, Ink.Veil(Colour, 130), 0.9, [1, 4], new(x, Top), new(x, Bottom));
                Flag(rc, x, Top);
            }
            else
            {
                Cross(rc, x, Bottom - Size - 2);
            }
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        if (FromTop)
        {
            Flag(rc, box.Center.X, box.Center.Y - Size);
        }
        else
        {
            Cross(rc, box.Center.X, box.Center.Y);
        }
    }

    private void Flag(IRenderContext rc, double x, double top) => rc.DrawPolygon(
        [new(x - Size, top), new(x + Size, top), new(x, top + (2 * Size))], Colour, OxyColors.Undefined, 0,
        EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);

    private void Cross(IRenderContext rc, double x, double y)
    {
        Stroke(rc, Colour, 1.4, null, new(x - Size + 1, y - Size + 1), new(x + Size - 1, y + Size - 1));
        Stroke(rc, Colour, 1.4, null, new(x - Size + 1, y + Size - 1), new(x + Size - 1, y - Size + 1));
    }
}
