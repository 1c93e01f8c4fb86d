using SweepStats.Bands;
using SweepStats.Report.Findings;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Report.Sheets;
using SweepStats.Report.Text;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Each specimen, the weakest first: a small picture, its figures over the band, and what these rest on.</summary>
internal sealed class SpecimensPart : IPagePart
{
    // More small pictures nobody looks through; more rows nobody reads.
    private const int MostPictures = 24;
    private const int MostRows = 1000;
    private const int MostPrinted = 40;

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        IReadOnlyList<int> order = FirstScreenWords.WeakestFirst(result);
        html.Fold("bands", SpecimenWords.SpecimensHeading);
        if (!content.Choice.Kept.IsEmpty)
        {
            Pictures(html, result, [.. order.Take(MostPictures).Select(i => result.Curves[i])]);
        }

        BandStatement[] shown = [.. order.Take(MostRows).Select(i => result.Bands[i])];
        html.Table(SpecimenWords.FiguresCaption(result), SpecimenWords.BandColumnsOf(result),
            shown.Select(b => SpecimenWords.BandRow(result, b)), MostPrinted);
        Rest(html, order.Count, shown.Length);

        html.Paragraph(PageWords.BlockedMeans);
        RestsOn(html, result, [.. shown.Take(MostPrinted)]);
        html.Close();
    }

    private static void Rest(HtmlWriter html, int all, int shown)
    {
        if (all > shown)
        {
            html.Element("p", SpecimenWords.RestInFile(all - shown, "bands.csv"), new Attr("class", "unprinted"));
        }

        if (all > MostPrinted)
        {
            html.Element("p", SpecimenWords.RestInFile(all - MostPrinted, "bands.csv"), new Attr("class", "printed"));
        }
    }

    private static void Pictures(HtmlWriter html, AnalysisResult result, IReadOnlyList<ShieldingCurve> shown)
    {
        var picture = new SpecimenPicture(result, shown);
        html.Open("div", new Attr("class", "multiples read"));
        foreach (ShieldingCurve curve in shown)
        {
            html.Open("figure").Element("figcaption", PrintedNames.SpecimenLabel(curve.Name));
            picture.Write(html, curve);
            html.Close();
        }

        html.Close();
    }

    // What many share is said once.
    private static void RestsOn(HtmlWriter html, AnalysisResult result, BandStatement[] shown)
    {
        var curves = result.Curves.ToDictionary(c => c.Name);
        string[] each = [.. shown.Select(b => PageWords.Repeats(curves.GetValueOrDefault(b.Name), b, result.Floor is not null))];
        if (MergedMessage.Of(each) is { } all)
        {
            html.Paragraph(all);
            return;
        }

        html.List(shown.Zip(each).GroupBy(s => s.Second)
            .Select(g => SpecimenWords.OfSpecimens([.. g.Select(s => s.First.Name)], g.Key)));
    }
}
