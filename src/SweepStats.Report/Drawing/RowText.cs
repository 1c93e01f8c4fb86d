using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Text on rows: at the left edge inside the plot, where long names have room, or in the margin at the right.</summary>
internal sealed class RowText : ChartSeries
{
    private const double Indent = 6;
    private const double Bold = 700;

    /// <summary>Rows with their text.</summary>
    public required IReadOnlyList<(double Row, string Text)> Rows { get; init; }

    /// <summary>Whether it stands out, as a heading does.</summary>
    public bool Heading { get; init; }

    /// <summary>
    /// Where the text ends in the margin, in pixels beyond the plot; null where it begins at the left edge of the plot.
    /// </summary>
    public double? EndsBeyond { get; init; }

    /// <inheritdoc/>
    public override OxyRect GetClippingRect() => EndsBeyond is null ? base.GetClippingRect() : OxyRect.Everything;

    protected override void Draw(IRenderContext rc)
    {
        double x = EndsBeyond is { } beyond ? XAxis.Transform(XAxis.ActualMaximum) + beyond
            : XAxis.Transform(XAxis.ActualMinimum) + Indent;
        HorizontalAlignment side = EndsBeyond is null ? HorizontalAlignment.Left : HorizontalAlignment.Right;
        foreach ((double row, string text) in Rows)
        {
            rc.DrawText(new ScreenPoint(x, YAxis.Transform(row)), text, Colour, ActualFont, ActualFontSize,
                Heading ? Bold : ActualFontWeight, 0, side, VerticalAlignment.Middle);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
    }
}
