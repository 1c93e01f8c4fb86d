using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Receivers;

/// <summary>A thick bar from limit to limit; an open end is an arrow.</summary>
internal sealed class SpanBars : ChartSeries
{
    private const double Thickness = 5, Arrow = 36, Head = 6, LabelDistance = 8;

    /// <summary>What each group shows; one end at least of each is known.</summary>
    public required IReadOnlyList<RowSpan> Spans { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        foreach (RowSpan span in Spans)
        {
            ScreenPoint left = span.Low is { } low ? At(low, span.Row) : Beyond(At(span.High!.Value, span.Row), -Arrow);
            ScreenPoint right = span.High is { } high ? At(high, span.Row) : Beyond(left, Arrow);
            Stroke(rc, Colour, Thickness, null, left, right);
            Ends(rc, span, left, right);
            rc.DrawText(Beyond(right, LabelDistance), MarginChartText.Figure(span), Colour, ActualFont, ActualFontSize,
                ActualFontWeight, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Stroke(rc, Colour, Thickness, null, new(box.Left, box.Center.Y), new(box.Right, box.Center.Y));

    private static ScreenPoint Beyond(ScreenPoint point, double pixels) => new(point.X + pixels, point.Y);

    private void Ends(IRenderContext rc, RowSpan span, ScreenPoint left, ScreenPoint right)
    {
        if (span.Low is null)
        {
            Stroke(rc, Colour, 2, null, new(left.X + Head, left.Y - Head), left, new(left.X + Head, left.Y + Head));
        }

        if (span.High is null)
        {
            Stroke(rc, Colour, 2, null, new(right.X - Head, right.Y - Head), right, new(right.X - Head, right.Y + Head));
        }
    }
}
