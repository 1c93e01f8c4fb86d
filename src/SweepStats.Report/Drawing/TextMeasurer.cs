using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Measures text in pixels without fonts and without native libraries, so that charts have the same bytes on every machine.
/// </summary>
/// <remarks>
/// The chart library's own measurer for SVG reckons in points: text comes out a quarter too narrow, legends are cut. Widths here
/// are the published advance widths of the common sans serif in thousandths of the type size; characters beyond ASCII count 0.6,
/// a little more than most need. Only <see cref="MeasureText"/> is ever called; drawing goes to the exporter.
/// </remarks>
internal sealed class TextMeasurer : RenderContextBase
{
    private const double Beyond = 600;
    private const double LineHeight = 1.15;
    private const double BoldFrom = 600;

    /// <summary>Bold letters of the same family are about 7 % wider.</summary>
    private const double BoldFactor = 1.07;

    // From the blank (32) to the tilde (126).
    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>None: nothing is clipped where nothing is drawn.</summary>
    public override int ClipCount => 0;

    /// <summary>Widest line and height of all lines, in pixels, whatever the family of type.</summary>
    public override OxySize MeasureText(string? text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text))
        {
            return OxySize.Empty;
        }

        string[] lines = text.Split('\n');
        double widest = lines.Max(Thousandths) * (fontWeight >= BoldFrom ? BoldFactor : 1);
        return new OxySize(widest * fontSize / 1000, lines.Length * fontSize * LineHeight);
    }

    /// <summary>Draws nothing.</summary>
    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness,
        EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
    }

    /// <summary>Draws nothing.</summary>
    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode,
        double[] dashArray, LineJoin lineJoin)
    {
    }

    /// <summary>Draws nothing.</summary>
    public override void DrawText(
        ScreenPoint p, string text, OxyColor fill, string fontFamily, double fontSize, double fontWeight, double rotation,
        HorizontalAlignment horizontalAlignment, VerticalAlignment verticalAlignment, OxySize? maxSize)
    {
    }

    /// <summary>Clips nothing.</summary>
    public override void PushClip(OxyRect clippingRectangle)
    {
    }

    /// <summary>Clips nothing.</summary>
    public override void PopClip()
    {
    }

    private static double Thousandths(string line)
    {
        double width = 0;
        foreach (char c in line)
        {
            width += c is >= ' ' and <= '~' ? Widths[c - ' '] : Beyond;
        }

        return width;
    }
}
