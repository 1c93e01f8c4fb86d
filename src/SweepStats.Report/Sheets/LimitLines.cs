using SweepStats.Checks;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Verdicts;

namespace SweepStats.Report.Sheets;

/// <summary>What limits the result in a few lines, each with its next step, in the order of the console's first screen.</summary>
internal static class LimitLines
{
    /// <summary>More findings than this are left to the annex.</summary>
    public const int Most = 5;

    private const int LongestMessage = 240;
    private const int LongestStep = 190;

    /// <summary>Writes the requirement's next step, findings but notes, untested doubts, and how many more there are.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        FindingGroup[] groups = Groups(result);
        html.Section("sheet-limits", SheetWords.LimitsHeading);
        if (UndecidedWords.RequirementStep(result) is { } step)
        {
            html.Element("p", SheetWords.Cut(step, LongestMessage + LongestStep));
        }

        if (groups.Length > 0 || !result.Verdict.Untested.IsEmpty)
        {
            List(html, groups.Take(Most), result.Verdict.Untested.Take(Most - groups.Length));
        }

        html.Element("p", string.Join(' ', Rest(result, groups)), new Attr("class", "small")).Close();
    }

    /// <summary>How many findings, and doubts that nothing tested, it tells of.</summary>
    public static int Shown(AnalysisResult result) => Math.Min(Most, Groups(result).Length + result.Verdict.Untested.Length);

    private static FindingGroup[] Groups(AnalysisResult result) =>
        [.. FindingGroup.Of(result.Findings).Where(g => g.Severity != Severity.Note)];

    private static void List(HtmlWriter html, IEnumerable<FindingGroup> groups, IEnumerable<UntestedDoubt> untested)
    {
        html.Open("ol");
        foreach (FindingGroup group in groups)
        {
            string[] brief = FirstScreenWords.InBrief(group);
            html.Open("li", new Attr("class", SummaryWords.Weight(group.Severity).ToLowerInvariant()));
            html.Text(SheetWords.Cut(brief[0], LongestMessage)).Text(" ");
            html.Element("b", SheetWords.Cut(brief[1].TrimStart(), LongestStep)).Close();
        }

        foreach (UntestedDoubt doubt in untested)
        {
            html.Open("li", new Attr("class", "untested")).Text($"Not tested: {VerdictWords.Doubt(doubt)}. ");
            html.Element("b", SheetWords.ToTest(doubt)).Close();
        }

        html.Close();
    }

    private static IEnumerable<string> Rest(AnalysisResult result, FindingGroup[] groups)
    {
        if (groups.Length > Most)
        {
            yield return SheetWords.MoreFindings(groups.Length - Most);
        }

        yield return groups.Length == 0 ? PageWords.NoFindings(result) : CheckWords.Untested(result);
    }
}
