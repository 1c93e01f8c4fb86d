using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Lots;
using SweepStats.Report.Pages;

namespace SweepStats.Report.History;

/// <summary>The page on lots of several campaigns.</summary>
internal static class HistoryPage
{
    /// <summary>The page in UTF-8, with charts of the kinds that it draws.</summary>
    public static byte[] Of(LotHistory history, IReadOnlyList<AnalysisResult> campaigns, ImmutableArray<ChartPicture> charts)
    {
        string title = string.Join(", ", campaigns.Select(c => c.Title).Distinct(StringComparer.Ordinal));
        return ReportPage.Of($"Lots compared: {title}", html =>
        {
            html.Open("header").Element("p", HistoryWords.HistoryKind, new Attr("class", "kind")).Element("h1", title);
            html.Element("p", HistoryWords.HistoryScope(history, campaigns.Count), new Attr("class", "scope")).Close();
            Lots(html, history, campaigns, charts);
            html.Section("campaigns", "Each campaign by itself").List(HistoryWords.HistoryCampaigns(history, campaigns)).Close();
            html.Section("cautions", "Cautions").List(PageWords.Cautions).Close();
            GlossaryPart.Write(html);
        });
    }

    private static void Lots(HtmlWriter html, LotHistory history, IReadOnlyList<AnalysisResult> campaigns,
        ImmutableArray<ChartPicture> charts)
    {
        string[] answer = [.. HistoryAnswerWords.HistoryAnswer(history, campaigns)];
        html.Section("lots", "Lots").Element("p", answer[0], new Attr("class", "headline"));
        html.List([.. answer[1..], .. HistoryWords.HistoryTrust(history, campaigns)]);
        Pairs(html, history);
        ChartFigure.Write(html, charts.Where(c => c.Kind == ChartKind.LotsOverFrequency));
        Bands(html, history);
        html.Element("h3", "All lots").Paragraph(HistoryWords.HistoryPart(history));
        html.Table("Lots of all campaigns", HistoryWords.HistoryColumns(history),
            history.Lots.Select(HistoryWords.HistoryRow)).List(HistoryWords.HistoryRemarks(history));
        ChartFigure.Write(html, charts.Where(c => c.Kind != ChartKind.LotsOverFrequency));
        html.Close();
    }

    private static void Pairs(HtmlWriter html, LotHistory history)
    {
        if (history.Pairs.IsEmpty)
        {
            return;
        }

        html.Table(HistoryWords.PairsCaption, HistoryWords.PairColumns(history),
            HistoryWords.PairsAsked(history).Select(p => HistoryWords.PairRow(p, history)));
        if (HistoryWords.PairsAsked(history).Count() > LotDifferenceChart.Most)
        {
            html.Paragraph(HistoryChartWords.PairsNotCharted(history, LotDifferenceChart.Most));
        }
    }

    private static void Bands(HtmlWriter html, LotHistory history)
    {
        if (!history.Bands.IsEmpty)
        {
            html.Element("h3", "Named bands").Table(HistoryBandWords.HistoryBandsCaption,
                HistoryBandWords.HistoryBandColumns(history), HistoryBandWords.HistoryBandRows(history));
        }

        string[] remarks = [.. HistoryBandWords.HistoryBandRemarks(history)];
        if (remarks.Length > 0)
        {
            html.List(remarks);
        }
    }
}
