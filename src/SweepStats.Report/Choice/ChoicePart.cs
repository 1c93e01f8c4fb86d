using SweepStats.Choice;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Choice;

/// <summary>Which specimen is best, band by band.</summary>
internal sealed class ChoicePart : IPagePart
{
    private const int MostRows = 40;
    private const int MostRowsOfPart = 8;

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Choice is not { } choice)
        {
            return;
        }

        html.Fold("choice", "Choice");
        var charts = new Queue<ChartPicture>(content.Charts.Where(c => c.Kind == ChartKind.Choice));
        foreach (BandRanking band in choice.Bands)
        {
            html.Element("h3", ChoiceWords.RankingHeading(band));
            html.Paragraph(string.Join(" ", ChoiceWords.ChoiceAnswer(content.Result, band)));
            // Without charts there is none for any band.
            bool whole = band == choice.Bands[0];
            if (ChoiceChart.Shows(band) && charts.TryDequeue(out ChartPicture? chart))
            {
                Chart(html, chart, whole);
            }

            Table(html, content.Result, band, whole ? MostRows : MostRowsOfPart);
        }

        foreach (string remark in RankingWords.ChoiceRemarks(content.Result))
        {
            html.Paragraph(remark);
        }

        html.Close();
    }

    // Of a part of the band the file is enough: the table beside it says the same.
    private static void Chart(HtmlWriter html, ChartPicture chart, bool whole)
    {
        if (whole)
        {
            ChartFigure.Write(html, chart);
        }
        else
        {
            ChartFigure.Links(html, [chart]);
        }
    }

    private static void Table(HtmlWriter html, AnalysisResult result, BandRanking band, int most)
    {
        IReadOnlyList<string>[] rows = [.. RankingWords.RankingRows(result, band)];
        html.Table($"Ranking: {ChoiceWords.RankingHeading(band)}", RankingWords.RankingColumns(result, band), rows.Take(most));
        if (rows.Length > most)
        {
            html.Paragraph(SpecimenWords.RestInFile(rows.Length - most, "choice.csv"));
        }
    }
}
