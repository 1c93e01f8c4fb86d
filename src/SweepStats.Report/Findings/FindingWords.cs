using SweepStats.Checks;
using SweepStats.Report.Answer;
using SweepStats.Report.Fields;
using SweepStats.Report.Screens;
using SweepStats.Report.Setup;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Findings;

/// <summary>Findings on the console.</summary>
public static class FindingWords
{
    /// <summary>
    /// The verdict, every finding, notes too, what found nothing or could not be tested, and the sweeps left out; what several
    /// specimens share is said once, with a line for each.
    /// </summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Check(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return
        [
            PlainText.Of(result.Title), VerdictWords.Headline(result), VerdictWords.TrustReason(result),
            .. DecisionWords.DecisionRuleInBrief(result) is { } rule ? [rule] : Array.Empty<string>(),
            .. FieldWords.FieldInBrief(result),
            .. result.Findings.GroupBy(f => (f.Severity, f.Code, f.NextStep)).SelectMany(
                alike => InFull(new(alike.Key.Severity, alike.Key.Code, alike.Key.NextStep, [.. alike]))),
            string.Empty, .. CheckWords.ChecksInBrief(result),
            .. SweepWords.LeftOutByUser(result.Campaign).Select(line => $"Left out by the user: {line}"),
        ];
    }

    private static IEnumerable<string> InFull(FindingGroup group) =>
    [
        string.Empty, $"{SummaryWords.Weight(group.Severity)} ({PlainText.Of(group.Code)})", .. Told(group),
        .. SummaryWords.Bases(group).Select(basis => "  " + PlainText.Of(basis)), $"  Next: {PlainText.Of(group.NextStep)}",
    ];

    /// <summary>
    /// A line a finding; one line for all where more specimens than can be named share a finding that differs in numbers at most.
    /// </summary>
    private static IEnumerable<string> Told(FindingGroup group)
    {
        if (group.Findings.Length <= MostSpecimensNamed || group.Findings.Any(f => f.Specimen is null)
            || group.CommonMessage is not { } message)
        {
            return group.Findings.Select(f =>
                (f.Specimen is { } name ? $"  {SpecimenLabel(name)}: " : "  ") + PlainText.Of(f.Message) + Place(Stretches(f)));
        }

        string[] places = [.. group.Findings.Select(Stretches).Distinct(StringComparer.Ordinal)];
        return [$"  {SummaryWords.SpecimenList(group.Findings)}: {PlainText.Of(message)}"
            + Place(places.Length == 1 ? places[0] : "frequencies of each: shielding.csv, column flags")];
    }

    internal static string Stretches(Finding finding) =>
        finding.Where.IsDefaultOrEmpty ? string.Empty : SummaryWords.Bands(finding.Where);

    internal static string Place(string stretches) => stretches.Length == 0 ? string.Empty : $" [{stretches}]";
}
