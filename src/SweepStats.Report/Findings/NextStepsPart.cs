using SweepStats.Checks;
using SweepStats.Report.Answer;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;

namespace SweepStats.Report.Findings;

/// <summary>The faults and warnings, gravest first, each with what to do.</summary>
internal sealed class NextStepsPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        FindingGroup[] steps = [.. FindingGroup.Of(content.Result.Findings.Where(f => f.Severity != Severity.Note))];
        html.Fold("next", "What to do next");
        if (UndecidedWords.RequirementStep(content.Result) is { } step)
        {
            html.Paragraph(step);
        }

        if (steps.Length == 0)
        {
            html.Paragraph(PageWords.NoFindings(content.Result));
        }

        FindingList.Write(html, content, steps);
        if (steps.Any(SummaryWords.LeavesOutStretches))
        {
            html.Paragraph(PageWords.AllStretches);
        }

        html.Close();
    }
}
