using SweepStats.Lots;
using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>Whether lots are alike, band by band.</summary>
internal sealed class LotsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        LotComparison lots = content.Result.Lots;
        if (content.Result.Curves.Length < 2)
        {
            return;
        }

        html.Fold("lots", "Lots");
        html.Paragraph(string.Join(" ", Wording.LotsAnswer(content.Result)));
        ChartPicture[] charts = [.. content.Charts.Where(ChartFigure.IsOfLots)];
        Draw(html, charts.Where(First));
        foreach (LotBand band in lots.Bands)
        {
            html.Element("h3", Wording.LotBandHeading(band)).Paragraph(Wording.ClearPart(band));
            html.Table($"Lots: {Wording.LotBandHeading(band)}", Wording.LotColumns(lots.Question, band), band.Lots.Select(l => Wording.LotRow(l, band)));
            html.List(Wording.LotRemarks(content.Result, band));
        }

        html.Paragraph(Wording.LotsMean(lots.Question));
        Draw(html, charts.Where(c => !First(c) && ChartFigure.IsDrawn(c)));
        ChartFigure.Links(html, [.. charts.Where(c => !ChartFigure.IsDrawn(c))]);
        html.Close();
    }

    // What answers whether lots are alike comes before the figures, what explains it behind.
    private static bool First(ChartPicture chart) => chart.Kind is ChartKind.Lots or ChartKind.LotsOverFrequency;

    private static void Draw(HtmlWriter html, IEnumerable<ChartPicture> charts)
    {
        foreach (ChartPicture chart in charts)
        {
            ChartFigure.Write(html, chart);
        }
    }
}
