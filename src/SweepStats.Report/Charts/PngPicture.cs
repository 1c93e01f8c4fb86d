using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace SweepStats.Report.Charts;

/// <summary>Draws a chart as PNG at twice the size of the screen, for documents that cannot take SVG.</summary>
internal static class PngPicture
{
    private const int Magnification = 2;
    private const int ScreenDotsPerInch = 96;
    private const string Remedy =
        "Install a font (on Debian: apt-get install fonts-dejavu-core) or leave out --png: the SVG charts need none.";

    public static byte[] Of(Chart chart)
    {
        using var drawn = new MemoryStream();
        try
        {
            // Without any font the drawing library loses text or fails deep inside with an unnamed argument: ask first.
            if (SKFontManager.Default.FontFamilyCount == 0)
            {
                throw new PngUnavailableException("PNG charts cannot be drawn: this machine has no fonts. " + Remedy);
            }

            new PngExporter
            {
                Width = Chart.Width * Magnification,
                Height = chart.Height * Magnification,
                Dpi = ScreenDotsPerInch * Magnification,
                UseTextShaping = false,
            }.Export(chart.Model, drawn);
        }
        catch (Exception e) when (e is TypeInitializationException or DllNotFoundException or ArgumentNullException)
        {
            throw new PngUnavailableException("PNG charts cannot be drawn: the drawing library or its fonts are missing on this machine. " + Remedy, e);
        }

        return drawn.ToArray();
    }
}
