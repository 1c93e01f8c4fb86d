using OxyPlot;

namespace SweepStats.Report.Charts;

/// <summary>The name of each group of bars above its first, inside the plot, where long names have room.</summary>
internal sealed class BudgetHeadings : ChartSeries
{
    private const double Indent = 6;
    private const double Bold = 700;

    /// <summary>Rows with their names.</summary>
    public required IReadOnlyList<(double Row, string Name)> Headings { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        foreach ((double row, string name) in Headings)
        {
            ScreenPoint at = At(0, row);
            rc.DrawText(new ScreenPoint(at.X + Indent, at.Y), name, Colour, ActualFont, ActualFontSize, Bold, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
    }
}
