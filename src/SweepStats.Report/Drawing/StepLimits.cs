using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Limits that hold for one place each: level over the place, a step to the next.</summary>
internal sealed class StepLimits : ChartSeries
{
    private const double Thickness = 1.3;
    private static readonly double[] Dash = [7, 4];

    /// <summary>Places with their limits.</summary>
    public required IReadOnlyList<Slice> Limits { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        Stroke(rc, Colour, Thickness, Dash, Steps(s => s.Low));
        Stroke(rc, Colour, Thickness, Dash, Steps(s => s.High));
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Stroke(rc, Colour, Thickness, Dash, new ScreenPoint(box.Left, box.Center.Y), new ScreenPoint(box.Right, box.Center.Y));

    private ScreenPoint[] Steps(Func<Slice, double> limit) =>
        [.. Limits.SelectMany(s => new[] { At(s.X - 0.5, limit(s)), At(s.X + 0.5, limit(s)) })];
}
