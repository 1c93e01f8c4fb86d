using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Findings;

/// <summary>
/// How the level of each group moved: the straight line that the drift was found by, over the group's own sweeps.
/// </summary>
internal sealed class DriftLines : ChartSeries
{
    private const double Thickness = 2;
    private static readonly double[] Dash = [9, 4];

    // Shorter ones are specks among the marks; where all are short they are drawn all the same.
    private const double Shortest = 24;

    /// <summary>The lines, each from left to right.</summary>
    public required IReadOnlyList<IReadOnlyList<DataPoint>> Lines { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        List<ScreenPoint[]> lines = [.. Lines.Select(line => line.Select(p => At(p.X, p.Y)).ToArray())];
        bool anyLong = lines.Exists(IsLong);
        foreach (ScreenPoint[] line in lines.Where(l => !anyLong || IsLong(l)))
        {
            Stroke(rc, Colour, Thickness, Dash, line);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Stroke(rc, Colour, Thickness, Dash, new ScreenPoint(box.Left, box.Center.Y), new ScreenPoint(box.Right, box.Center.Y));

    private static bool IsLong(ScreenPoint[] line) => line[^1].X - line[0].X >= Shortest;
}
