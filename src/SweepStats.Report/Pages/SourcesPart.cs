namespace SweepStats.Report.Pages;

/// <summary>Where the methods come from.</summary>
internal sealed class SourcesPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content) =>
        html.Fold("sources", "Sources of the methods").List(PageWords.Sources).Close();
}
