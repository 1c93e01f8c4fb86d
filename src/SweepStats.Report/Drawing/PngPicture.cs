using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace SweepStats.Report.Drawing;

/// <summary>Draws a chart as PNG at twice the size of the screen, for documents that cannot take SVG.</summary>
internal static class PngPicture
{
    private const int Magnification = 2;
    private const int ScreenDotsPerInch = 96;
    private const string Needed = "M0≥−";
    private const string Remedy =
        "Install a font (on Debian: apt-get install fonts-dejavu-core) or leave out --png: the SVG charts need none.";

    /// <summary>The PNG; a <see cref="PngUnavailableException"/> says what to install where it cannot be drawn.</summary>
    public static byte[] Of(Chart chart)
    {
        using var drawn = new MemoryStream();
        try
        {
            if (!CanWrite())
            {
                throw new PngUnavailableException(
                    "PNG charts cannot be drawn: no font of this machine has the letters they need. " + Remedy);
            }

            new PngExporter
            {
                Width = Chart.Width * Magnification,
                Height = chart.Height * Magnification,
                Dpi = ScreenDotsPerInch * Magnification,
                UseTextShaping = false,
            }.Export(chart.Model, drawn);
        }
        catch (Exception e) when ((e.InnerException ?? e) is DllNotFoundException)
        {
            throw new PngUnavailableException(
                "PNG charts cannot be drawn: the drawing library is missing. Put the files libSkiaSharp and libHarfBuzzSharp of "
                    + "the build beside the program, or leave out --png.", e);
        }
        catch (Exception e) when (e is TypeInitializationException or ArgumentNullException)
        {
            throw new PngUnavailableException(
                "PNG charts cannot be drawn: the drawing library or its fonts are missing on this machine. " + Remedy, e);
        }

        return drawn.ToArray();
    }

    // Without fonts the drawing library gives an empty typeface and leaves all text out without a word; its count of font
    // families is then still 1.
    private static bool CanWrite()
    {
        using SKTypeface? typeface = SKTypeface.FromFamilyName(Frame.Font);
        return typeface is not null && Needed.All(letter => typeface.ContainsGlyph(letter));
    }
}
