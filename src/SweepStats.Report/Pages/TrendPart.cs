using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>What an ordered factor does to the shielding, and up to where the requirement is met.</summary>
internal sealed class TrendPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Trend is not { } trend)
        {
            return;
        }

        html.Fold("trend", Wording.TrendHeading(trend));
        html.Paragraph(string.Join(" ", Wording.TrendAnswer(content.Result, trend)));
        foreach (ChartPicture chart in content.Charts.Where(c => c.Kind == ChartKind.Trend))
        {
            ChartFigure.Write(html, chart);
        }

        html.Table($"Values of {Wording.Factor(trend)}", Wording.TrendValueColumns(trend), trend.Groups.Select(g => Wording.TrendValueRow(trend, g)));
        html.Table("Trend by band", Wording.TrendBandColumns, trend.Bands.Select(b => Wording.TrendBandRow(trend, b)));
        html.Paragraph(Wording.TrendMeans(trend));
        html.Close();
    }
}
