using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;

namespace SweepStats.Report.Findings;

/// <summary>Findings as a list, what several specimens share told once.</summary>
internal static class FindingList
{
    /// <summary>Writes a numbered list, an item a group; nothing where there are none.</summary>
    public static void Write(HtmlWriter html, PageContent content, IReadOnlyList<FindingGroup> groups)
    {
        if (groups.Count == 0)
        {
            return;
        }

        html.Open("ol", new Attr("class", "findings"));
        foreach (FindingGroup group in groups)
        {
            Group(html, content, group);
        }

        html.Close();
    }

    private static void Group(HtmlWriter html, PageContent content, FindingGroup group)
    {
        string weight = SummaryWords.Weight(group.Severity);
        html.Open("li", new Attr("class", weight.ToLowerInvariant()));
        html.Open("p").Element("strong", weight).Text(" ");
        html.Text(group.CommonMessage ?? SummaryWords.SeveralFindings(group)).Text(" ").Element("code", group.Code).Close();
        html.Open("p").Element("em", "Next:").Text(" " + group.NextStep).Close();
        Basis(html, group);
        Charts(html, content, group);
        if (group.CommonMessage is null)
        {
            html.List(group.Findings.Select(f => $"{SummaryWords.Concerns(f)}: {f.Message}"));
        }
        else
        {
            string[] concerns = [.. SummaryWords.Concerns(group)];
            if (concerns.Length == 1)
            {
                html.Element("p", "Concerns: " + concerns[0], new Attr("class", "concerns"));
            }
            else if (concerns.Length > 1)
            {
                html.List(concerns);
            }
        }

        html.Close();
    }

    private static void Basis(HtmlWriter html, FindingGroup group)
    {
        foreach (string basis in SummaryWords.Bases(group))
        {
            html.Element("p", basis, new Attr("class", "basis"));
        }
    }

    private static void Charts(HtmlWriter html, PageContent content, FindingGroup group)
    {
        ChartPicture[] charts = [.. content.Charts.Where(c => c.Shows.Contains(group.Code))];
        if (charts.Length == 0)
        {
            return;
        }

        html.Open("p", new Attr("class", "basis")).Text(FindingChartWords.ShownIn);
        for (int i = 0; i < charts.Length; i++)
        {
            html.Text(i == 0 ? " " : "· ").Element("a", charts[i].Title, new Attr("href", ChartsPart.Place(content, charts[i])));
        }

        html.Close();
    }
}
