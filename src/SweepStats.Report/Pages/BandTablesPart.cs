using SweepStats.Bands;
using SweepStats.Shielding;

namespace SweepStats.Report.Pages;

/// <summary>What can be said of each specimen over the band, in dB and in percent of field and of power.</summary>
internal sealed class BandTablesPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Section("bands", "Figures of the whole band");
        html.Paragraph(Wording.BlockedMeans);
        foreach (BandStatement band in result.Bands)
        {
            html.Element("h3", Wording.SpecimenLabel(band.Name));
            html.Table($"{Wording.SpecimenLabel(band.Name)}, {Wording.Band(band.Band)}", Wording.BandColumns, Rows(band));
            ShieldingCurve? curve = result.Curves.FirstOrDefault(c => c.Name == band.Name);
            html.Paragraph(Wording.Repeats(curve, band, result.Floor is not null));
        }

        html.Close();
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(BandStatement band)
    {
        yield return Row(
            "At least, everywhere in the band", band.AtLeast is { } claim ? Wording.Bound(claim) : "no claim", new BandFigure(null, band.AtLeast?.Value, null));
        yield return ["Mean over the band", Wording.Figure(band.MeanDb), Wording.Nothing, Wording.Nothing];
        yield return Row("Reached by nine tenths of the band", Wording.Figure(band.TenthPercentileDb), band.TenthPercentileDb);
        if (band.ShareMeeting is { } share)
        {
            yield return ["Share of the band that meets the requirement", Wording.Share(share), Wording.Nothing, Wording.Nothing];
        }
    }

    private static IReadOnlyList<string> Row(string name, string figure, BandFigure from) =>
        [name, figure, Wording.Blocked(from, db => db.FieldBlocked), Wording.Blocked(from, db => db.PowerBlocked)];
}
