using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Budgets;

/// <summary>Horizontal bars from zero, each with its figure at the end.</summary>
internal sealed class BudgetBars : ChartSeries
{
    private const double HalfHeight = 6;
    private const double LabelDistance = 6;

    /// <summary>Rows with their values in dB.</summary>
    public required IReadOnlyList<BudgetBar> Bars { get; init; }

    /// <summary>Outlined and pale, so that it is told from a full bar on a grey print too.</summary>
    public bool Hollow { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Bars.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        foreach ((double row, double value) in Bars)
        {
            ScreenPoint zero = At(0, row);
            ScreenPoint end = At(value, row);
            Bar(rc, new OxyRect(new ScreenPoint(zero.X, zero.Y - HalfHeight), new ScreenPoint(end.X, end.Y + HalfHeight)));
            rc.DrawText(
                new ScreenPoint(end.X + LabelDistance, end.Y), BudgetAdviceWords.Contribution(value), Ink.Black, ActualFont,
                ActualFontSize, ActualFontWeight, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Bar(rc, new OxyRect(new ScreenPoint(box.Left, box.Center.Y - HalfHeight),
            new ScreenPoint(box.Right - 4, box.Center.Y + HalfHeight)));

    private void Bar(IRenderContext rc, OxyRect box) =>
        rc.DrawRectangle(box, Hollow ? Ink.Veil(Colour, 40) : Colour, Colour, Hollow ? 1.2 : 0,
            EdgeRenderingMode.PreferGeometricAccuracy);
}
