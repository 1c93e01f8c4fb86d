namespace SweepStats.Report.Pages;

/// <summary>What the report does not say, and what has to be observed at the bench.</summary>
internal sealed class CautionsPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content) =>
        html.Fold("cautions", "Cautions").List(PageWords.Cautions).Close();
}
