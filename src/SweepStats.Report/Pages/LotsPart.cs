using SweepStats.Lots;

namespace SweepStats.Report.Pages;

/// <summary>Whether lots are alike, band by band.</summary>
internal sealed class LotsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        LotComparison lots = content.Result.Lots;
        html.Section("lots", "Lots");
        foreach (string sentence in Wording.LotsAnswer(lots))
        {
            html.Paragraph(sentence);
        }

        foreach (LotBand band in lots.Bands)
        {
            html.Element("h3", Wording.LotBandHeading(band)).Paragraph(Wording.ClearPart(band));
            html.Table($"Lots: {Wording.LotBandHeading(band)}", Wording.LotColumns(lots.Question), band.Lots.Select(Wording.LotRow));
            html.List(Wording.LotRemarks(lots, band));
        }

        html.Paragraph(Wording.LotsMean(lots.Question)).Close();
    }
}
