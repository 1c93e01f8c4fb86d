using SweepStats.Report.Pages;

namespace SweepStats.Report.Findings;

/// <summary>Every check of the list with its outcome, so that a reader sees what was looked at and what was not.</summary>
internal sealed class ChecksPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("checks", CheckWords.LookedAt);
        html.Table("Checks and how they ended", CheckWords.CheckColumns, CheckWords.ChecksMade(content.Result)).Close();
    }
}
