using SweepStats.Checks;

namespace SweepStats.Report.Pages;

/// <summary>The findings, gravest first, each with what to do.</summary>
internal sealed class NextStepsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Section("next", "What to do next");
        if (content.Result.Findings.IsEmpty)
        {
            html.Paragraph(Wording.NoFindings).Close();
            return;
        }

        html.Open("ol", ("class", "findings"));
        foreach (Finding finding in content.Result.Findings.OrderByDescending(f => f.Severity))
        {
            string weight = Wording.Weight(finding.Severity);
            html.Open("li", ("class", weight.ToLowerInvariant()));
            html.Open("p").Element("strong", weight).Text(" ").Text(finding.Message).Text(" ").Element("code", finding.Code).Close();
            string concerns = Wording.Concerns(finding);
            if (concerns.Length > 0)
            {
                html.Element("p", "Concerns: " + concerns, ("class", "concerns"));
            }

            html.Open("p").Element("em", "Next:").Text(" " + finding.NextStep).Close();
            html.Close();
        }

        html.Close().Close();
    }
}
