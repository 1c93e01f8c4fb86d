using SweepStats.Choice;
using SweepStats.Report.Charts;

namespace SweepStats.Report.Pages;

/// <summary>Which specimen is best, band by band.</summary>
internal sealed class ChoicePart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Choice is not { } choice)
        {
            return;
        }

        html.Section("choice", "Choice");
        var charts = new Queue<ChartPicture>(content.Charts.Where(c => c.Kind == ChartKind.Choice));
        foreach (BandRanking band in choice.Bands)
        {
            html.Element("h3", Wording.RankingHeading(band));
            html.Paragraph(string.Join(" ", Wording.ChoiceAnswer(content.Result, band)));
            // Without charts there is none for any band.
            if (ChoiceChart.Shows(band) && charts.TryDequeue(out ChartPicture? chart))
            {
                ChartFigure.Write(html, chart);
            }

            html.Table($"Ranking: {Wording.RankingHeading(band)}", Wording.RankingColumns(content.Result, band), Wording.RankingRows(content.Result, band));
        }

        foreach (string remark in Wording.ChoiceRemarks(content.Result))
        {
            html.Paragraph(remark);
        }

        html.Close();
    }
}
