using SweepStats.Report.Drawing;
using SweepStats.Report.Findings;
using SweepStats.Shielding;

namespace SweepStats.Report.Pages;

/// <summary>
/// The charts that belong to no section of their own, each with a link to its file; beyond a number of them the links alone.
/// </summary>
internal sealed class ChartsPart : IPagePart
{
    // A page of hundreds of drawings opens slowly and prints by the ream; the overviews come first, the rest is one click away.
    private const int MostDrawn = 40;

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("charts", "Charts");
        if (!content.Choice.LeftOut.IsEmpty)
        {
            html.Paragraph(PageWords.ChartsLeftOut(content.Choice));
        }

        if (!content.Choice.Kept.IsEmpty)
        {
            Drawn(html, content);
        }

        html.Close();
    }

    /// <summary>Where a chart of a page stands: on the page where it is drawn, else its file.</summary>
    public static string Place(PageContent content, ChartPicture chart) =>
        !ChartFigure.IsDrawn(chart) ? ChartFigure.Path(chart)
            : Array.IndexOf([.. Others(content).Where(ChartFigure.IsDrawn)], chart) < MostDrawn ? "#" + ChartFigure.Anchor(chart)
            : ChartFigure.Path(chart);

    private static void Drawn(HtmlWriter html, PageContent content)
    {
        if (content.Charts.All(c => c.Kind != ChartKind.Range))
        {
            html.Paragraph(PageWords.NoRangeChart);
        }

        if (content.Result.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.AtLeast)))
        {
            html.Paragraph(PageWords.CrowdedArrows);
        }

        ChartPicture[] charts = Others(content);
        ChartPicture[] drawn = [.. charts.Where(ChartFigure.IsDrawn).Take(MostDrawn)];
        foreach (IGrouping<string, ChartPicture> group in drawn.GroupBy(c => FindingChartWords.ChartGroup(c.Kind)))
        {
            html.Element("h3", group.Key);
            ChartFigure.Write(html, group);
        }

        ChartFigure.Links(html, [.. charts.Except(drawn)]);
    }

    private static ChartPicture[] Others(PageContent content) => [.. content.Charts.Where(c => !ChartFigure.HasItsSection(c))];
}
