using System.Text;
using System.Xml;
using System.Xml.Linq;
using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Draws a chart as one <c>svg</c> element that scales, names itself to a screen reader, and can share a page with others.
/// </summary>
internal static class SvgPicture
{
    /// <summary>What comes before the element where it is a file of its own.</summary>
    public const string Declaration = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n";

    private const int ShortestFitted = 8;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The chart as a file of UTF-8, with its own ids, so that charts on one page do not clip each other.</summary>
    public static ChartPicture Of(Chart chart)
    {
        using var drawn = new MemoryStream();
        IPlotModel model = chart.Model;
        using var lines = new LongLines(drawn, new OxySize(Chart.Width, chart.Height), model.Background);
        model.Update(true);
        model.Render(lines, new OxyRect(0, 0, Chart.Width, chart.Height));
        lines.Complete();
        lines.Flush();
        drawn.Position = 0;
        XElement root = XDocument.Load(drawn).Root!;
        OwnIds(root, chart.Name);
        Fit(root);
        Scale(root, chart.Height);
        Name(root, chart);
        return new ChartPicture(chart.Name, chart.Kind, chart.Title, lines.Filled(Declaration + Text(root)), chart.Shows);
    }

    /// <summary>The library numbers its clip paths from 1 in every chart: on one page they would clip each other.</summary>
    private static void OwnIds(XElement root, string prefix)
    {
        foreach (XElement element in root.DescendantsAndSelf())
        {
            if (element.Attribute("id") is { } id)
            {
                id.Value = $"{prefix}-{id.Value}";
            }

            if (element.Attribute("clip-path") is { } clip)
            {
                clip.Value = clip.Value.Replace("url(#", $"url(#{prefix}-", StringComparison.Ordinal);
            }
        }
    }

    // A machine without the font that was measured draws with a wider one: labels would run into each other, or out of the
    // picture.
    private static void Fit(XElement root)
    {
        var measurer = new TextMeasurer();
        foreach (XElement label in root.Descendants(Svg + "text").Where(t => t.Value.Length >= ShortestFitted))
        {
            double size = (double?)label.Attribute("font-size") ?? 12;
            double weight = (double?)label.Attribute("font-weight") ?? FontWeights.Normal;
            label.SetAttributeValue("textLength",
                FormattableString.Invariant($"{measurer.MeasureText(label.Value, null, size, weight).Width:0.#}"));
            label.SetAttributeValue("lengthAdjust", "spacingAndGlyphs");
        }
    }

    private static void Scale(XElement root, int height)
    {
        root.SetAttributeValue("viewBox", FormattableString.Invariant($"0 0 {Chart.Width} {height}"));
        root.SetAttributeValue("width", FormattableString.Invariant($"{Chart.Width}"));
        root.SetAttributeValue("height", FormattableString.Invariant($"{height}"));
    }

    private static void Name(XElement root, Chart chart)
    {
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-labelledby", $"{chart.Name}-title {chart.Name}-desc");
        root.AddFirst(new XElement(Svg + "title", new XAttribute("id", $"{chart.Name}-title"), chart.Title),
            new XElement(Svg + "desc", new XAttribute("id", $"{chart.Name}-desc"), chart.Description));
    }

    private static string Text(XElement root)
    {
        var text = new StringBuilder();
        var settings =
            new XmlWriterSettings { OmitXmlDeclaration = true, Indent = false, NewLineHandling = NewLineHandling.None };
        using (var writer = XmlWriter.Create(text, settings))
        {
            root.WriteTo(writer);
        }

        return text.Append('\n').ToString();
    }
}
