using SweepStats.Report.Charts;
using SweepStats.Shielding;

namespace SweepStats.Report.Pages;

/// <summary>The charts that belong to no section of their own, each with a link to its file; beyond a number of them the links alone.</summary>
internal sealed class ChartsPart : IPagePart
{
    // A page of hundreds of drawings opens slowly and prints by the ream; the overviews come first, the rest is one click away.
    private const int MostDrawn = 40;

    public void Write(HtmlWriter html, PageContent content)
    {
        html.Section("charts", "Charts");
        if (!content.Choice.LeftOut.IsEmpty)
        {
            html.Paragraph(Wording.ChartsLeftOut(content.Choice));
        }

        if (!content.Choice.Kept.IsEmpty)
        {
            Drawn(html, content);
        }

        html.Close();
    }

    /// <summary>Where a chart of a page stands: on the page where it is drawn, else its file.</summary>
    public static string Place(PageContent content, ChartPicture chart) =>
        Array.IndexOf(Others(content), chart) < MostDrawn ? "#" + ChartFigure.Anchor(chart) : ChartFigure.Path(chart);

    private static void Drawn(HtmlWriter html, PageContent content)
    {
        if (content.Charts.All(c => c.Kind != ChartKind.Range))
        {
            html.Paragraph(Wording.NoRangeChart);
        }

        if (content.Result.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.AtLeast)))
        {
            html.Paragraph(Wording.CrowdedArrows);
        }

        ChartPicture[] charts = Others(content);
        foreach (IGrouping<string, ChartPicture> group in charts.Take(MostDrawn).GroupBy(c => Wording.ChartGroup(c.Kind)))
        {
            html.Element("h3", group.Key);
            foreach (ChartPicture chart in group)
            {
                ChartFigure.Write(html, chart);
            }
        }

        if (charts.Length > MostDrawn)
        {
            html.Paragraph(Wording.ChartsInFiles(charts.Length - MostDrawn));
            html.Open("ul");
            foreach (ChartPicture chart in charts.Skip(MostDrawn))
            {
                html.Open("li").Element("a", chart.Title, ("href", ChartFigure.Path(chart))).Close();
            }

            html.Close();
        }
    }

    private static ChartPicture[] Others(PageContent content) => [.. content.Charts.Where(c => !ChartFigure.HasItsSection(c))];
}
