using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>The page on lots of several campaigns.</summary>
internal static class HistoryPage
{
    public static string Of(LotHistory history, IReadOnlyList<AnalysisResult> campaigns, ImmutableArray<ChartPicture> charts)
    {
        string title = string.Join(", ", campaigns.Select(c => c.Title).Distinct(StringComparer.Ordinal));
        return ReportPage.Of($"Lots compared: {title}", html =>
        {
            html.Open("header").Element("p", Wording.HistoryKind, ("class", "kind")).Element("h1", title);
            html.Element("p", Wording.HistoryScope(history, campaigns.Count), ("class", "scope")).Close();
            html.Section("lots", "Lots").Element("p", string.Join(" ", Wording.HistoryAnswer(history)), ("class", "headline")).Paragraph(Wording.HistoryPart(history));
            html.Table("Lots of all campaigns", Wording.HistoryColumns(history), history.Lots.Select(Wording.HistoryRow)).List(Wording.HistoryRemarks(history));
            if (!history.Pairs.IsEmpty)
            {
                html.Table(Wording.PairsCaption, Wording.PairColumns, Wording.PairsAsked(history).Select(p => Wording.PairRow(p, history)));
            }

            foreach (ChartPicture chart in charts)
            {
                ChartFigure.Write(html, chart);
            }

            html.Close();
            html.Section("campaigns", "Campaigns").List(campaigns.Select(c => $"{c.Title}: {Wording.Headline(c)} {Wording.TrustReason(c)}")).Close();
            html.Section("cautions", "Cautions").List(Wording.Cautions).Close();
            GlossaryPart.Write(html);
        });
    }
}
