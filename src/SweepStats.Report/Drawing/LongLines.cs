using System.Globalization;
using System.Text;
using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Draws as the library does, but keeps the points of long lines and outlines, and puts them into the finished text at the end.
/// </summary>
/// <remarks>
/// A chart of 1 601 frequencies holds some ten thousand points; formatting them, and reading them again as XML to name and number
/// the elements, took most of the time of a report. In their place the library draws two points far outside of any picture, the
/// second of which numbers the line.
/// </remarks>
internal sealed class LongLines(Stream to, OxySize size, OxyColor background)
    : SvgRenderContext(to, size.Width, size.Height, isDocument: false, new TextMeasurer(), background,
        useVerticalTextAlignmentWorkaround: true)
{
    // Shorter ones are as quick the plain way.
    private const int Fewest = 12;
    private const double Outside = -70_000_000;
    private const string List = "points=\"";

    private readonly List<ScreenPoint[]> _kept = [];

    /// <inheritdoc/>
    public override void DrawLine(
        IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray,
        LineJoin lineJoin) =>
        base.DrawLine(Marked(points, edgeRenderingMode), stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    /// <inheritdoc/>
    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode,
        double[] dashArray, LineJoin lineJoin) =>
        base.DrawPolygon(Marked(points, edgeRenderingMode), fill, stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    /// <summary>A text in UTF-8, every mark in it replaced by the points that it stands for.</summary>
    public byte[] Filled(string text)
    {
        string mark = FormattableString.Invariant($"{List}{Outside:0},");
        using var filled = new MemoryStream(text.Length + (24 * _kept.Sum(line => line.Length)));
        int from = 0;
        for (int found = text.IndexOf(mark, StringComparison.Ordinal); found >= 0; found =
            text.IndexOf(mark, from, StringComparison.Ordinal))
        {
            Put(filled, text.AsSpan(from, found + List.Length - from));
            int number = found + mark.Length, end = text.IndexOf(' ', number);
            SvgPoints.Append(filled, _kept[int.Parse(text.AsSpan(number, end - number), CultureInfo.InvariantCulture)]);
            from = text.IndexOf('"', end);
        }

        Put(filled, text.AsSpan(from));
        return filled.ToArray();
    }

    private static void Put(MemoryStream to, ReadOnlySpan<char> text)
    {
        var bytes = new byte[Encoding.UTF8.GetByteCount(text)];
        Encoding.UTF8.GetBytes(text, bytes);
        to.Write(bytes);
    }

    // Where edges are to be sharp the library moves points onto pixels first.
    private IList<ScreenPoint> Marked(IList<ScreenPoint> points, EdgeRenderingMode edges)
    {
        if (points.Count < Fewest || edges != EdgeRenderingMode.PreferGeometricAccuracy)
        {
            return points;
        }

        _kept.Add([.. points]);
        var mark = new ScreenPoint(Outside, _kept.Count - 1);
        return [mark, mark];
    }
}
