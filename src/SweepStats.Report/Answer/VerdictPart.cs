using SweepStats.Report.Pages;

namespace SweepStats.Report.Answer;

/// <summary>Why the verdict of the first sheet is as it is.</summary>
internal sealed class VerdictPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Fold("verdict", PageWords.VerdictHeading);
        html.Open("p").Text(VerdictWords.TrustReason(result));
        if (VerdictWords.OutcomeReason(result) is { } reason)
        {
            html.Text(" " + reason);
        }

        html.Close();
        if (result.Floor is null)
        {
            html.Paragraph(PageWords.NoFloorMeans);
        }

        VerdictRule.Write(html, result);
        html.Close();
    }
}
