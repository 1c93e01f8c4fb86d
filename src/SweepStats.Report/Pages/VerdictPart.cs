namespace SweepStats.Report.Pages;

/// <summary>Why the verdict of the first sheet is as it is.</summary>
internal sealed class VerdictPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Fold("verdict", Wording.VerdictHeading);
        html.Open("p").Text(Wording.TrustReason(result));
        if (Wording.OutcomeReason(result) is { } reason)
        {
            html.Text(" " + reason);
        }

        html.Close();
        if (result.Floor is null)
        {
            html.Paragraph(Wording.NoFloorMeans);
        }

        VerdictRule.Write(html, result);
        html.Close();
    }
}
