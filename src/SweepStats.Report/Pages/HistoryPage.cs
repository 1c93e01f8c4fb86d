using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>The page on lots of several campaigns.</summary>
internal static class HistoryPage
{
    public static byte[] Of(LotHistory history, IReadOnlyList<AnalysisResult> campaigns, ImmutableArray<ChartPicture> charts)
    {
        string title = string.Join(", ", campaigns.Select(c => c.Title).Distinct(StringComparer.Ordinal));
        return ReportPage.Of($"Lots compared: {title}", html =>
        {
            html.Open("header").Element("p", Wording.HistoryKind, ("class", "kind")).Element("h1", title);
            html.Element("p", Wording.HistoryScope(history, campaigns.Count), ("class", "scope")).Close();
            html.Section("lots", "Lots").Element("p", Wording.HistoryAnswer(history, campaigns).First(), ("class", "headline"));
            html.List([.. Wording.HistoryAnswer(history, campaigns).Skip(1), .. Wording.HistoryTrust(history, campaigns)]);
            Pairs(html, history);
            Draw(html, charts.Where(c => c.Kind == ChartKind.LotsOverFrequency));
            Bands(html, history);
            html.Element("h3", "All lots").Paragraph(Wording.HistoryPart(history));
            html.Table("Lots of all campaigns", Wording.HistoryColumns(history), history.Lots.Select(Wording.HistoryRow)).List(Wording.HistoryRemarks(history));
            Draw(html, charts.Where(c => c.Kind != ChartKind.LotsOverFrequency));
            html.Close();
            html.Section("campaigns", "Each campaign by itself").List(Wording.HistoryCampaigns(history, campaigns)).Close();
            html.Section("cautions", "Cautions").List(Wording.Cautions).Close();
            GlossaryPart.Write(html);
        });
    }

    private static void Pairs(HtmlWriter html, LotHistory history)
    {
        if (history.Pairs.IsEmpty)
        {
            return;
        }

        html.Table(Wording.PairsCaption, Wording.PairColumns(history), Wording.PairsAsked(history).Select(p => Wording.PairRow(p, history)));
        if (Wording.PairsAsked(history).Count() > LotDifferenceChart.Most)
        {
            html.Paragraph(Wording.PairsNotCharted(history, LotDifferenceChart.Most));
        }
    }

    private static void Bands(HtmlWriter html, LotHistory history)
    {
        if (!history.Bands.IsEmpty)
        {
            html.Element("h3", "Named bands").Table(Wording.HistoryBandsCaption, Wording.HistoryBandColumns(history), Wording.HistoryBandRows(history));
        }

        string[] remarks = [.. Wording.HistoryBandRemarks(history)];
        if (remarks.Length > 0)
        {
            html.List(remarks);
        }
    }

    private static void Draw(HtmlWriter html, IEnumerable<ChartPicture> charts)
    {
        foreach (ChartPicture chart in charts)
        {
            ChartFigure.Write(html, chart);
        }
    }
}
