using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Report.Drawing;

namespace SweepStats.Acceptance.Report;

/// <summary>What the letters of a text cover, in units of the chart.</summary>
internal readonly record struct TextBox(double Left, double Top, double Right, double Bottom)
{
    public bool Overlaps(TextBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>Where a text of a chart stands, from its own attributes.</summary>
internal static class ChartText
{
    private static readonly Regex Numbers = new(@"-?\d+(\.\d+)?", RegexOptions.None, TimeSpan.FromSeconds(5));

    public static double Size(XElement text) => Number(Style(text, "font-size"));

    public static bool IsInside(XElement text, XElement svg)
    {
        TextBox box = Box(text);
        return box.Left >= 0 && box.Top >= 0 && box.Right <= Number(svg.Attribute("width")!.Value)
            && box.Bottom <= Number(svg.Attribute("height")!.Value);
    }

    public static bool Overlap(XElement a, XElement b) => Box(a).Overlaps(Box(b));

    /// <summary>How far down the middle of the letters is.</summary>
    public static double Middle(XElement text)
    {
        TextBox box = Box(text);
        return (box.Top + box.Bottom) / 2;
    }

    /// <summary>The box of the letters: from cap height to just below the base line.</summary>
    public static TextBox Box(XElement text)
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
            ? new TextBox(at[0] + up, at[1] - start - width, at[0] + down, at[1] - start)
            : new TextBox(at[0] + start, at[1] + up, at[0] + start + width, at[1] + down);
    }

    private static string Style(XElement text, string name) =>
        text.Attribute(name)?.Value ?? throw new InvalidOperationException($"{text} has no {name}");

    private static double Number(string text) =>
        double.Parse(text.Replace("px", string.Empty, StringComparison.Ordinal), CultureInfo.InvariantCulture);
}
