using SweepStats.Checks;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;

namespace SweepStats.Report.Findings;

/// <summary>Findings that ask for nothing but help to read the figures; they come after the charts.</summary>
internal sealed class NotesPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        FindingGroup[] groups = [.. FindingGroup.Of(content.Result.Findings)];
        FindingGroup[] notes = [.. groups.Where(g => g.Severity == Severity.Note)];
        if (notes.Length == 0)
        {
            return;
        }

        html.Fold("notes", PageWords.GoodToKnow);
        FindingList.Write(html, content, notes);
        // Said once: the steps further up already tell where they leave frequencies out themselves.
        if (notes.Any(SummaryWords.LeavesOutStretches) && !groups.Except(notes).Any(SummaryWords.LeavesOutStretches))
        {
            html.Paragraph(PageWords.AllStretches);
        }

        html.Close();
    }
}
