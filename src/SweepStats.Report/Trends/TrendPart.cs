using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;

namespace SweepStats.Report.Trends;

/// <summary>What an ordered factor does to the shielding, and up to where the requirement is met.</summary>
internal sealed class TrendPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Trend is not { } trend)
        {
            return;
        }

        html.Fold("trend", TrendWords.TrendHeading(trend));
        html.Paragraph(string.Join(" ", TrendWords.TrendAnswer(content.Result, trend)));
        foreach (ChartPicture chart in content.Charts.Where(c => c.Kind == ChartKind.Trend))
        {
            ChartFigure.Write(html, chart);
        }

        html.Table($"Values of {TrendWords.Factor(trend)}", TrendWords.TrendValueColumns(trend),
            trend.Groups.Select(g => TrendWords.TrendValueRow(trend, g)));
        html.Table("Trend by band", TrendWords.TrendBandColumns, trend.Bands.Select(b => TrendWords.TrendBandRow(trend, b)));
        html.Paragraph(TrendWords.TrendMeans(trend));
        html.Close();
    }
}
