using OxyPlot;
using OxyPlot.Annotations;
using SweepStats.Report.Findings;

namespace SweepStats.Report.Drawing;

/// <summary>
/// The scale of a heat map below it: a bar of its colours with figures, and what the hatching means where there is any.
/// </summary>
internal sealed class HeatKey : Annotation
{
    /// <summary>Height that it needs below the axis, in pixels.</summary>
    public const double Room = 52;

    private const double Shade = 12;
    private const double BarHeight = 12;
    private const double LabelSize = 13;
    private const double HatchWidth = 34;
    private const double Apart = 46;
    private const double Gap = 8;

    /// <summary>The scale.</summary>
    public required HeatScale Scale { get; init; }

    /// <summary>Why cells are hatched; null where none is.</summary>
    public required string? Hatched { get; init; }

    /// <summary>What a cell shows of several values; null where each shows one.</summary>
    public required string? Shared { get; init; }

    /// <inheritdoc/>
    public override OxyRect GetClippingRect() => OxyRect.Everything;

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        double left = ChartTitle.Edge, top = Math.Round(PlotModel.Height - Room + 9);
        double right = left + (Shade * ((2 * HeatScale.Shades) + 1)), below = top + BarHeight + 3;
        Bar(rc, new OxyRect(left, top, right - left, BarHeight));
        Label(rc, new(left, below), FindingChartWords.ScaleLow(Scale), HorizontalAlignment.Left, VerticalAlignment.Top);
        Label(rc, new((left + right) / 2, below), "0", HorizontalAlignment.Center, VerticalAlignment.Top);
        Label(rc, new(right, below), FindingChartWords.ScaleHigh(Scale), HorizontalAlignment.Right, VerticalAlignment.Top);
        double beside = right + Apart;
        if (Hatched is not null)
        {
            Hatch.Draw(rc, new OxyRect(beside, top, HatchWidth, BarHeight));
            Label(rc, new(beside + HatchWidth + Gap, top + (BarHeight / 2)), Hatched, HorizontalAlignment.Left,
                VerticalAlignment.Middle);
        }

        if (Shared is not null)
        {
            Label(rc, new(beside, below), Shared, HorizontalAlignment.Left, VerticalAlignment.Top);
        }
    }

    private static void Bar(IRenderContext rc, OxyRect whole)
    {
        for (int i = -HeatScale.Shades; i <= HeatScale.Shades; i++)
        {
            rc.DrawRectangle(
                new OxyRect(whole.Left + ((i + HeatScale.Shades) * Shade), whole.Top, Shade, BarHeight), HeatScale.Colour(i),
                OxyColors.Undefined, 0, EdgeRenderingMode.PreferSharpness);
        }

        rc.DrawRectangle(whole, OxyColors.Undefined, Ink.Grey, 0.8, EdgeRenderingMode.PreferGeometricAccuracy);
    }

    private static void Label(IRenderContext rc, ScreenPoint at, string text, HorizontalAlignment across,
        VerticalAlignment along) => rc.DrawText(at, text, Ink.Black, Frame.Font, LabelSize, 400, 0, across, along);
}
