namespace SweepStats.Report.Pages;

/// <summary>How to read the numbers.</summary>
internal sealed class ReadingGuidePart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("reading", "How to read the numbers").Open("dl");
        foreach ((string term, string meaning) in PageWords.Guide(content.Result))
        {
            html.Element("dt", term).Element("dd", meaning);
        }

        html.Close().Close();
    }
}
