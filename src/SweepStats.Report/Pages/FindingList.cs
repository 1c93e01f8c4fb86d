namespace SweepStats.Report.Pages;

/// <summary>Findings as a list, what several specimens share told once.</summary>
internal static class FindingList
{
    public static void Write(HtmlWriter html, IReadOnlyList<FindingGroup> groups)
    {
        if (groups.Count == 0)
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
        Basis(html, group);
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

    private static void Basis(HtmlWriter html, FindingGroup group)
    {
        foreach (string basis in Wording.Bases(group))
        {
            html.Element("p", basis, ("class", "basis"));
        }
    }
}
