using SweepStats.Checks;

namespace SweepStats.Report.Pages;

/// <summary>The faults and warnings, gravest first, each with what to do.</summary>
internal sealed class NextStepsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        FindingGroup[] steps = [.. FindingGroup.Of(content.Result.Findings.Where(f => f.Severity != Severity.Note))];
        html.Fold("next", "What to do next");
        if (Wording.RequirementStep(content.Result) is { } step)
        {
            html.Paragraph(step);
        }

        if (steps.Length == 0)
        {
            html.Paragraph(Wording.NoFindings(content.Result));
        }

        FindingList.Write(html, content, steps);
        if (steps.Any(Wording.LeavesOutStretches))
        {
            html.Paragraph(Wording.AllStretches);
        }

        html.Close();
    }
}
