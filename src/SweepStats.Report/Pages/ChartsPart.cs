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

        List<ChartPicture> linked = [];
        int drawn = 0;
        foreach (ChartPicture chart in content.Charts)
        {
            if (drawn >= MostDrawn)
            {
                linked.Add(chart);
                continue;
            }

            drawn++;
            html.Open("figure").Drawing(chart.Svg);
            html.Open("figcaption").Text(chart.Title + " · ").Element("a", Path(chart), ("href", Path(chart))).Close();
            html.Close();
        }

        if (linked.Count > 0)
        {
            html.Paragraph(Wording.ChartsInFiles(linked.Count));
            html.Open("ul");
            foreach (ChartPicture chart in linked)
            {
                html.Open("li").Element("a", chart.Title, ("href", Path(chart))).Close();
            }

            html.Close();
        }

        html.Close();
    }

    private static string Path(ChartPicture chart) => $"charts/{chart.Name}.svg";
}
