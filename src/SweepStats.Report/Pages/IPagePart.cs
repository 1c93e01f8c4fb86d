namespace SweepStats.Report.Pages;

/// <summary>One section of the page.</summary>
internal interface IPagePart
{
    /// <summary>Writes the section; nothing where there is nothing to say.</summary>
    void Write(HtmlWriter html, PageContent content);
}
