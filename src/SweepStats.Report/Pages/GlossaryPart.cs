namespace SweepStats.Report.Pages;

/// <summary>Ten words that the page uses.</summary>
internal sealed class GlossaryPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content) => Write(html);

    /// <summary>Writes the folded section: it is the same on every page.</summary>
    public static void Write(HtmlWriter html)
    {
        html.Fold("words", GlossaryWords.GlossaryHeading).Open("dl");
        foreach (Term term in GlossaryWords.Glossary)
        {
            html.Element("dt", term.Word).Element("dd", term.Meaning);
        }

        html.Close().Close();
    }
}
