namespace SweepStats.Report.Pages;

/// <summary>Every check of the list with its outcome, so that a reader sees what was looked at and what was not.</summary>
internal sealed class ChecksPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("checks", Wording.LookedAt);
        html.Table("Checks and how they ended", Wording.CheckColumns, Wording.ChecksMade(content.Result)).Close();
    }
}
