using SweepStats.Checks;

namespace SweepStats.Report;

/// <content>Findings on the console.</content>
public static partial class Wording
{
    /// <summary>The verdict, every finding, notes too, what found nothing or could not be tested, and the sweeps left out; what several specimens share is said once, with a line for each.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Check(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), Headline(result), TrustReason(result)];
        if (DecisionRuleInBrief(result) is { } rule)
        {
            lines.Add(rule);
        }

        lines.AddRange(FieldInBrief(result));

        foreach (var alike in result.Findings.GroupBy(f => (f.Severity, f.Code, f.NextStep)))
        {
            lines.Add(string.Empty);
            lines.Add($"{Weight(alike.Key.Severity)} ({PlainText.Of(alike.Key.Code)})");
            var group = new FindingGroup(alike.Key.Severity, alike.Key.Code, alike.Key.NextStep, [.. alike]);
            lines.AddRange(Told(group));
            lines.AddRange(Bases(group).Select(basis => "  " + PlainText.Of(basis)));
            lines.Add($"  Next: {PlainText.Of(alike.Key.NextStep)}");
        }

        lines.Add(string.Empty);
        lines.AddRange(ChecksInBrief(result));
        lines.AddRange(LeftOutByUser(result.Campaign).Select(line => $"Left out by the user: {line}"));
        return lines;
    }

    /// <summary>A line a finding; one line for all where more specimens than can be named share a finding that differs in numbers at most.</summary>
    private static IEnumerable<string> Told(FindingGroup group)
    {
        if (group.Findings.Length <= MostSpecimensNamed || group.Findings.Any(f => f.Specimen is null) || group.CommonMessage is not { } message)
        {
            return group.Findings.Select(f => (f.Specimen is { } name ? $"  {SpecimenLabel(name)}: " : "  ") + PlainText.Of(f.Message) + Place(Stretches(f)));
        }

        string[] places = [.. group.Findings.Select(Stretches).Distinct(StringComparer.Ordinal)];
        return [$"  {SpecimenList(group.Findings)}: {PlainText.Of(message)}" + Place(places.Length == 1 ? places[0] : "frequencies of each: shielding.csv, column flags")];
    }

    private static string Stretches(Finding finding) => finding.Where.IsDefaultOrEmpty ? string.Empty : Bands(finding.Where);

    private static string Place(string stretches) => stretches.Length == 0 ? string.Empty : $" [{stretches}]";
}
