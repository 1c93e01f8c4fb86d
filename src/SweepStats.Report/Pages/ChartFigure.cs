using SweepStats.Report.Drawing;

namespace SweepStats.Report.Pages;

/// <summary>A chart drawn on the page, with a link to its file.</summary>
internal static class ChartFigure
{
    /// <summary>Charts that stand in the sections that they belong to, and not among the others.</summary>
    public static bool HasItsSection(ChartPicture chart) => chart.Kind is ChartKind.Choice or ChartKind.Trend || IsOfLots(chart);

    /// <summary>
    /// Whether a chart is on the page: of those that a small picture or a table stands in for, the file alone is left.
    /// </summary>
    public static bool IsDrawn(ChartPicture chart) => chart.Kind is not
        (ChartKind.Overview or ChartKind.Bands or ChartKind.Shielding or ChartKind.Levels or ChartKind.Budget or ChartKind.Scatter
            or ChartKind.Consistency or ChartKind.OverTime);

    /// <summary>Charts of the section on lots.</summary>
    public static bool IsOfLots(ChartPicture chart) =>
        chart.Kind is ChartKind.Lots or ChartKind.LotsOverFrequency or ChartKind.LotPromise or ChartKind.Scatter
            or ChartKind.Consistency or ChartKind.OverTime;

    /// <summary>Writes charts one under the other, in their order.</summary>
    public static void Write(HtmlWriter html, IEnumerable<ChartPicture> charts)
    {
        foreach (ChartPicture chart in charts)
        {
            Write(html, chart);
        }
    }

    /// <summary>Writes one chart.</summary>
    public static void Write(HtmlWriter html, ChartPicture chart)
    {
        html.Open("figure", new Attr("id", Anchor(chart)), new Attr("class", "chart"), new Attr("tabindex", "0"))
            .Drawing(chart.Svg);
        html.Open("figcaption").Text(chart.Title + " · ").Element("a", Path(chart), new Attr("href", Path(chart))).Close();
        html.Close();
    }

    /// <summary>Links to charts that are not drawn on the page.</summary>
    public static void Links(HtmlWriter html, IReadOnlyList<ChartPicture> charts)
    {
        if (charts.Count == 0)
        {
            return;
        }

        html.Paragraph(PageWords.ChartsInFiles(charts.Count)).Open("ul", new Attr("class", "links"));
        foreach (ChartPicture chart in charts)
        {
            html.Open("li").Element("a", chart.Title, new Attr("href", Path(chart))).Close();
        }

        html.Close();
    }

    /// <summary>Where on the page the chart stands, as the end of a link; only where it is drawn.</summary>
    public static string Anchor(ChartPicture chart) => "chart-" + chart.Name;

    /// <summary>File of the chart, seen from the page.</summary>
    public static string Path(ChartPicture chart) => $"charts/{chart.Name}.svg";
}
