using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>All charts, each with a link to its file.</summary>
internal sealed class ChartsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Section("charts", "Charts");
        if (content.Charts.All(c => c.Kind != ChartKind.Range))
        {
            html.Paragraph(Wording.NoRangeChart);
        }

        foreach (ChartPicture chart in content.Charts)
        {
            html.Open("figure").Drawing(chart.Svg);
            html.Open("figcaption").Text(chart.Title + " · ").Element("a", $"charts/{chart.Name}.svg", ("href", $"charts/{chart.Name}.svg")).Close();
            html.Close();
        }

        html.Close();
    }
}
