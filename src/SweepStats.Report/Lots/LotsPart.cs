using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;

namespace SweepStats.Report.Lots;

/// <summary>Whether lots are alike, band by band.</summary>
internal sealed class LotsPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        LotComparison lots = content.Result.Lots;
        if (content.Result.Curves.Length < 2)
        {
            return;
        }

        html.Fold("lots", "Lots");
        html.Paragraph(string.Join(" ", LotAnswerWords.LotsAnswer(content.Result)));
        ChartPicture[] charts = [.. content.Charts.Where(ChartFigure.IsOfLots)];
        ChartFigure.Write(html, charts.Where(First));
        foreach (LotBand band in lots.Bands)
        {
            Band(html, content.Result, band);
        }

        html.Paragraph(LotWords.LotsMean(lots.Question));
        ChartFigure.Write(html, charts.Where(c => !First(c) && ChartFigure.IsDrawn(c)));
        ChartFigure.Links(html, [.. charts.Where(c => !ChartFigure.IsDrawn(c))]);
        html.Close();
    }

    private static void Band(HtmlWriter html, AnalysisResult result, LotBand band)
    {
        html.Element("h3", LotWords.LotBandHeading(band)).Paragraph(LotWords.ClearPart(band));
        html.Table($"Lots: {LotWords.LotBandHeading(band)}", LotWords.LotColumns(result.Lots.Question, band),
            band.Lots.Select(l => LotWords.LotRow(l, band)));
        html.List(LotRemarkWords.LotRemarks(result, band));
    }

    // What answers whether lots are alike comes before the figures, what explains it behind.
    private static bool First(ChartPicture chart) => chart.Kind is ChartKind.Lots or ChartKind.LotsOverFrequency;
}
