using SweepStats.Report.Answer;
using SweepStats.Report.Fields;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Shielding;

namespace SweepStats.Report.Sheets;

/// <summary>The first printed page: who, what, the verdict, the picture, a row a specimen, and what limits it.</summary>
internal sealed class SheetOne : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Open("article", new Attr("class", "sheet"), new Attr("aria-label", SheetWords.SheetNumber(1)));
        html.Open("header");
        SheetHead.Write(html, result, 1);
        html.Element("h1", result.Title).Element("p", PageWords.Scope(result), new Attr("class", "scope"));
        IdentityBlock.Write(html, result);
        html.Close();
        Verdict(html, result);
        if (!content.Choice.Kept.IsEmpty)
        {
            Picture(html, result);
        }

        html.Section("sheet-specimens", SheetWords.TableHeading);
        SpecimenTable.Write(html, result, LinesMore(result));
        html.Close();
        LimitLines.Write(html, result);
        html.Close();
    }

    private static void Verdict(HtmlWriter html, AnalysisResult result)
    {
        html.Section("sheet-verdict", SheetWords.VerdictHeading)
            .Element("p", VerdictWords.Headline(result), new Attr("class", "headline"));
        foreach (string line in FieldWords.FieldInBrief(result))
        {
            html.Element("p", line.Trim(), new Attr("class", "small"));
        }

        html.Close();
    }

    private static void Picture(HtmlWriter html, AnalysisResult result)
    {
        html.Open("figure", new Attr("class", "wide read"), new Attr("tabindex", "0"));
        html.Element("figcaption", SheetWords.PictureTitle(result), new Attr("class", "finding"));
        ShieldingPicture.Write(html, result);
        ShieldingCurve drawn = result.Curves[FirstScreenWords.LowestClaim(result)];
        html.Element("p", string.Join(' ', SheetWords.PictureKey(result, drawn)), new Attr("class", "small")).Close();
    }

    // Long names, a field, a requirement that is not met and many findings take room that rows would have.
    private static int LinesMore(AnalysisResult result)
    {
        const int RowsOfFinding = 2;
        const int LettersOfTitle = 64;
        const int Letters = 110;
        int title = result.Title.Length / LettersOfTitle;
        int verdict = VerdictWords.Headline(result).Length / Letters;
        int field = result.Plan.Field is null ? 0 : 3;
        int step = (UndecidedWords.RequirementStep(result)?.Length ?? 0) > 0 ? 3 : 0;
        int free = RowsOfFinding * (LimitLines.Most - LimitLines.Shown(result));
        return Math.Max(0, IdentityBlock.LinesMore(result) + title + Math.Max(0, verdict - 2) + field + step - free);
    }
}
