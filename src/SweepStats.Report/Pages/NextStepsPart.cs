using SweepStats.Checks;

namespace SweepStats.Report.Pages;

/// <summary>The findings, gravest first, each with what to do.</summary>
internal sealed class NextStepsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        FindingGroup[] groups = [.. FindingGroup.Of(content.Result.Findings)];
        FindingGroup[] steps = [.. groups.Where(g => g.Severity != Severity.Note)];
        FindingGroup[] notes = [.. groups.Where(g => g.Severity == Severity.Note)];
        html.Section("next", "What to do next");
        if (steps.Length == 0)
        {
            html.Paragraph(Wording.NoFindings);
        }

        Groups(html, steps);
        if (notes.Length > 0)
        {
            html.Element("h3", "Good to know");
            Groups(html, notes);
        }

        html.Close();
    }

    private static void Groups(HtmlWriter html, FindingGroup[] groups)
    {
        if (groups.Length == 0)
        {
            return;
        }

        html.Open("ol", ("class", "findings"));
        foreach (FindingGroup group in groups)
        {
            Group(html, group);
        }

        html.Close();
    }

    private static void Group(HtmlWriter html, FindingGroup group)
    {
        string weight = Wording.Weight(group.Severity);
        html.Open("li", ("class", weight.ToLowerInvariant()));
        html.Open("p").Element("strong", weight).Text(" ");
        html.Text(group.CommonMessage ?? Wording.SeveralFindings(group)).Text(" ").Element("code", group.Code).Close();
        html.Open("p").Element("em", "Next:").Text(" " + group.NextStep).Close();
        if (group.CommonMessage is null)
        {
            html.List(group.Findings.Select(f => $"{Wording.Concerns(f)}: {f.Message}"));
        }
        else
        {
            string[] concerns = [.. Wording.Concerns(group)];
            if (concerns.Length == 1)
            {
                html.Element("p", "Concerns: " + concerns[0], ("class", "concerns"));
            }
            else if (concerns.Length > 1)
            {
                html.List(concerns);
            }
        }

        html.Close();
    }
}
