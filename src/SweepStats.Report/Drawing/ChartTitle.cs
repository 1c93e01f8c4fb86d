using OxyPlot;
using OxyPlot.Annotations;

namespace SweepStats.Report.Drawing;

/// <summary>Title and subtitle at the left edge, in the type of the page: the library can only centre its own.</summary>
internal sealed class ChartTitle : Annotation
{
    /// <summary>Type of titles: whichever of these the viewer has.</summary>
    private const string Family = "Georgia, 'Times New Roman', serif";

    /// <summary>Height that title and subtitle need above the plot, in pixels.</summary>
    public const double Room = Edge + (TitleSize * LineHeight) + (SubtitleSize * LineHeight) + Below;

    /// <summary>Distance of the titles from the left and upper edge, in pixels.</summary>
    public const double Edge = 10;

    private const double TitleSize = 18;
    private const double SubtitleSize = 13;
    private const double LineHeight = 1.3;
    private const double Below = 8;

    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>What the reader needs to know before the curve; null for nothing.</summary>
    public required string? Subtitle { get; init; }

    /// <inheritdoc/>
    public override OxyRect GetClippingRect() => OxyRect.Everything;

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        Line(rc, Edge, Title, new(Family, TitleSize, Ink.Black));
        if (!string.IsNullOrEmpty(Subtitle))
        {
            Line(rc, Edge + (TitleSize * LineHeight), Subtitle, new(Frame.Font, SubtitleSize, Ink.Grey));
        }
    }

    private static void Line(IRenderContext rc, double top, string text, Lettering type) => rc.DrawText(
        new ScreenPoint(Edge, top), text, type.Colour, type.Font, type.Size, 400, 0, HorizontalAlignment.Left,
        VerticalAlignment.Top);

    /// <summary>How a line of the title is set.</summary>
    private readonly record struct Lettering(string Font, double Size, OxyColor Colour);
}
