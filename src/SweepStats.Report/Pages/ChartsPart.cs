using SweepStats.Report.Charts;
using SweepStats.Shielding;

namespace SweepStats.Report.Pages;

/// <summary>The charts, each with a link to its file; beyond a number of them the links alone.</summary>
internal sealed class ChartsPart : IPagePart
{
    // A page of hundreds of drawings opens slowly and prints by the ream; the overviews come first, the rest is one click away.
    private const int MostDrawn = 40;

    public void Write(HtmlWriter html, PageContent content)
    {
        html.Section("charts", "Charts");
        if (content.Charts.All(c => c.Kind != ChartKind.Range))
        {
            html.Paragraph(Wording.NoRangeChart);
        }

        if (content.Result.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.AtLeast)))
        {
            html.Paragraph(Wording.CrowdedArrows);
        }

        foreach (IGrouping<string, ChartPicture> group in content.Charts.Take(MostDrawn).GroupBy(c => Wording.ChartGroup(c.Kind)))
        {
            html.Element("h3", group.Key);
            foreach (ChartPicture chart in group)
            {
                Figure(html, chart);
            }
        }

        if (content.Charts.Length > MostDrawn)
        {
            html.Paragraph(Wording.ChartsInFiles(content.Charts.Length - MostDrawn));
            html.Open("ul");
            foreach (ChartPicture chart in content.Charts.Skip(MostDrawn))
            {
                html.Open("li").Element("a", chart.Title, ("href", Path(chart))).Close();
            }

            html.Close();
        }

        html.Close();
    }

    /// <summary>Where a chart of a page stands: on the page where it is drawn, else its file.</summary>
    public static string Place(PageContent content, ChartPicture chart) =>
        content.Charts.IndexOf(chart) < MostDrawn ? "#" + Anchor(chart) : Path(chart);

    private static void Figure(HtmlWriter html, ChartPicture chart)
    {
        html.Open("figure", ("id", Anchor(chart))).Drawing(chart.Svg);
        html.Open("figcaption").Text(chart.Title + " · ").Element("a", Path(chart), ("href", Path(chart))).Close();
        html.Close();
    }

    private static string Anchor(ChartPicture chart) => "chart-" + chart.Name;

    private static string Path(ChartPicture chart) => $"charts/{chart.Name}.svg";
}
