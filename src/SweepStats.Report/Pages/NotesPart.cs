using SweepStats.Checks;

namespace SweepStats.Report.Pages;

/// <summary>Findings that ask for nothing but help to read the figures; they come after the charts.</summary>
internal sealed class NotesPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        FindingGroup[] groups = [.. FindingGroup.Of(content.Result.Findings)];
        FindingGroup[] notes = [.. groups.Where(g => g.Severity == Severity.Note)];
        if (notes.Length == 0)
        {
            return;
        }

        html.Fold("notes", Wording.GoodToKnow);
        FindingList.Write(html, content, notes);
        // Said once: the steps further up already tell where they leave frequencies out themselves.
        if (notes.Any(Wording.LeavesOutStretches) && !groups.Except(notes).Any(Wording.LeavesOutStretches))
        {
            html.Paragraph(Wording.AllStretches);
        }

        html.Close();
    }
}
