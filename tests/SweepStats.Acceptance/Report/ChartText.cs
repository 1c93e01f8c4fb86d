using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Report.Charts;

namespace SweepStats.Acceptance.Report;

/// <summary>Where a text of a chart stands, from its own attributes.</summary>
internal static class ChartText
{
    private static readonly Regex Numbers = new(@"-?\d+(\.\d+)?", RegexOptions.None, TimeSpan.FromSeconds(5));

    public static double Size(XElement text) => Number(Style(text, "font-size"));

    public static bool IsInside(XElement text, XElement svg)
    {
        (double left, double top, double right, double bottom) = Box(text);
        return left >= 0 && top >= 0 && right <= Number(svg.Attribute("width")!.Value) && bottom <= Number(svg.Attribute("height")!.Value);
    }

    public static bool Overlap(XElement a, XElement b)
    {
        (double left, double top, double right, double bottom) = Box(a);
        (double left2, double top2, double right2, double bottom2) = Box(b);
        return left < right2 && left2 < right && top < bottom2 && top2 < bottom;
    }

    /// <summary>How far down the middle of the letters is.</summary>
    public static double Middle(XElement text)
    {
        (_, double top, _, double bottom) = Box(text);
        return (top + bottom) / 2;
    }

    /// <summary>The box of the letters: from cap height to just below the base line.</summary>
    private static (double Left, double Top, double Right, double Bottom) Box(XElement text)
    {
        double[] at = [.. Numbers.Matches(text.Attribute("transform")!.Value).Select(m => Number(m.Value))];
        double size = Size(text);
        double width = new TextMeasurer().MeasureText(text.Value, null, size, Number(Style(text, "font-weight"))).Width;
        double start = text.Attribute("text-anchor")?.Value switch { "middle" => -width / 2, "end" => -width, _ => 0 };
        double shift = text.Attribute("dy") is { } dy ? Number(dy.Value.TrimEnd('m', 'e')) * size : 0;
        bool upright = at.Length > 2 && Math.Abs(at[2]) > 45;
        double up = shift - (0.72 * size);
        double down = shift + (0.1 * size);
        return upright
            ? (at[0] + up, at[1] - start - width, at[0] + down, at[1] - start)
            : (at[0] + start, at[1] + up, at[0] + start + width, at[1] + down);
    }

    private static string Style(XElement text, string name) => text.Attribute(name)?.Value ?? throw new InvalidOperationException($"{text} has no {name}");

    private static double Number(string text) => double.Parse(text.Replace("px", string.Empty, StringComparison.Ordinal), CultureInfo.InvariantCulture);
}
