using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;

namespace SweepStats.Report.Trends;

/// <summary>What an ordered factor does to the shielding, and up to where the requirement is met.</summary>
internal sealed class TrendPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Trend is not { } trend)
        {
            return;
        }

        html.Fold("trend", TrendWords.TrendHeading(trend));
        html.Paragraph(string.Join(" ", TrendWords.TrendAnswer(content.Result, trend)));
        ChartFigure.Write(html, content.Charts.Where(c => c.Kind == ChartKind.Trend));
        html.Table($"Values of {FactorWords.Factor(trend)}", TrendWords.TrendValueColumns(trend),
            trend.Groups.Select(g => TrendWords.TrendValueRow(trend, g)));
        html.Table("Trend by band", SlopeWords.TrendBandColumns, trend.Bands.Select(b => SlopeWords.TrendBandRow(trend, b)));
        html.Paragraph(TrendWords.TrendMeans(trend));
        html.Close();
    }
}
