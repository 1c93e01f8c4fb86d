using SweepStats.Choice;
using SweepStats.Report.Choice;
using SweepStats.Report.Lots;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;
using SweepStats.Report.Trends;
using SweepStats.Verdicts;

namespace SweepStats.Report.Sheets;

/// <summary>
/// The second printed page: lots and choice where they apply, set-up, signatures, and what the report rests on.
/// </summary>
internal sealed class SheetTwo : IPagePart
{
    private const int TrendSentences = 3;

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Open("article", new Attr("class", "sheet"), new Attr("aria-label", SheetWords.SheetNumber(2)));
        html.Open("header");
        SheetHead.Write(html, result, 2);
        html.Element("p", result.Title, new Attr("class", "title")).Close();
        Answers(html, content);
        Setup(html, result);
        Signatures(html);
        html.Open("footer").List(SheetWords.Cautions);
        html.Element("p", RestsOn(content), new Attr("class", "small")).Close().Close();
    }

    private static void Answers(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        // Where nothing may be relied on, a picture would be taken for an answer.
        bool drawn = !content.Choice.Kept.IsEmpty && result.Verdict.Trust != Trust.Untrustworthy;
        if (result.Trend is { } trend)
        {
            html.Section("sheet-trend", SheetWords.TrendHeading);
            html.Paragraph(string.Join(' ', TrendWords.TrendAnswer(result, trend).Take(TrendSentences))).Close();
        }

        bool lots = result.Lots.Lots.Length > 1;
        if (!lots && result.Choice is null)
        {
            return;
        }

        html.Open("div", new Attr("class", "pair"));
        if (lots)
        {
            Lots(html, result, drawn && LotsPicture.Shows(result));
        }

        if (result.Choice is { } choice)
        {
            Choice(html, result, choice.Bands[0], drawn && ChoicePicture.Shows(choice.Bands[0]));
        }

        html.Close();
    }

    private static void Lots(HtmlWriter html, AnalysisResult result, bool drawn)
    {
        html.Section("sheet-lots", SheetWords.LotsHeading).Paragraph(string.Join(' ', LotAnswerWords.LotsInBrief(result)));
        if (drawn)
        {
            html.Open("figure");
            LotsPicture.Write(html, result);
            if (SheetWords.LotsKey(result) is { } key)
            {
                html.Element("figcaption", key);
            }

            html.Close();
        }

        html.Close();
    }

    private static void Choice(HtmlWriter html, AnalysisResult result, BandRanking band, bool drawn)
    {
        html.Section("sheet-choice", SheetWords.ChoiceHeading);
        if (LotAnswerWords.LotToTake(result) is { } lot)
        {
            html.Paragraph(lot);
        }

        html.Paragraph(string.Join(' ', ChoiceWords.ChoiceAnswer(result, band)));
        if (drawn)
        {
            html.Open("figure");
            ChoicePicture.Write(html, result.Choice!, band);
            html.Element("figcaption", SheetWords.ChoiceKey(result.Choice!, band)).Close();
        }

        html.Close();
    }

    private static void Setup(HtmlWriter html, AnalysisResult result)
    {
        html.Section("sheet-setup", SheetWords.SetupHeading).Open("dl", new Attr("class", "lines"));
        foreach (IdentityLine line in SetupLines.Of(result).Append(new IdentityLine("Standards", SheetWords.Standards)))
        {
            html.Open("div").Element("dt", line.Name).Element("dd", line.Text!).Close();
        }

        html.Close().Close();
    }

    private static void Signatures(HtmlWriter html)
    {
        html.Section("sheet-signed", SheetWords.SignedHeading).Open("div", new Attr("class", "signatures"));
        foreach (string signs in SheetWords.Signatures)
        {
            html.Element("p", signs);
            foreach (string what in SheetWords.SignatureParts)
            {
                html.Open("p").Element("span", SheetWords.Blank, new Attr("class", "blank"));
                html.Element("span", what, new Attr("class", "small")).Close();
            }
        }

        html.Close().Close();
    }

    private static string RestsOn(PageContent content)
    {
        string[] parts =
        [
            "SweepStats" + (content.Options.Version is { } version ? $" {PlainText.Of(version)}" : string.Empty),
            .. content.Options.InputDigest is { } digest ? [SheetWords.Digest(digest)] : Array.Empty<string>(),
        ];
        return string.Join(" · ", parts) + ".";
    }
}
