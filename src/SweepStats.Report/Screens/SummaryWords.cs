using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Choice;
using SweepStats.Report.Fields;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Text;
using SweepStats.Report.Trends;
using SweepStats.Shielding;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Screens;

/// <summary>The console summary and findings.</summary>
public static class SummaryWords
{
    /// <summary>
    /// The result on the console: verdict, one claim a specimen, findings that limit or forbid a claim with what to do next.
    /// </summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Summary(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), VerdictWords.Headline(result), VerdictWords.TrustReason(result)];
        if ((UndecidedWords.RequirementStep(result) ?? VerdictWords.OutcomeReason(result)) is { } step)
        {
            lines.Add(step);
            lines.Add(DecisionWords.DecisionRuleInBrief(result)!);
        }

        lines.AddRange(result.Trend is { } trend ? TrendWords.TrendAnswer(result, trend) : []);
        lines.AddRange(Specimens(result));
        lines.AddRange(FieldWords.FieldInBrief(result));
        lines.AddRange(result.Lots.Lots.Length > 1 ? LotAnswerWords.LotsAnswer(result) : []);
        lines.AddRange(result.Choice?.Bands[0] is { } ranking ? ChoiceWords.ChoiceAnswer(result, ranking) : []);
        lines.AddRange(FindingGroup.Of(result.Findings).SelectMany(Told));
        return lines;
    }

    private static IEnumerable<string> Specimens(AnalysisResult result)
    {
        IReadOnlyList<string> pieces = ShortNames.Of([.. result.Bands.Select(b => b.Name.ToString())], LongestSpecimen);
        int widest = pieces.Count == 0 ? 0 : pieces.Max(p => p.Length);
        string face = result.Verdict.Trust == Verdicts.Trust.Untrustworthy ? "at face value " : string.Empty;
        return result.Bands.Zip(pieces, result.Curves).Select(specimen => $"  {specimen.Second.PadRight(widest)}  {face}"
            + VerdictWords.Claim(specimen.First) + HiddenBy(specimen.First, specimen.Third) + Stands(result, specimen.First)
            + FieldWords.FieldBehind(result, specimen.First));
    }

    private static string HiddenBy(BandStatement band, ShieldingCurve curve) =>
        (band.CappedCount > 0 ? ". " + VerdictWords.Capped(band, curve).TrimEnd('.') : string.Empty)
        + (band.OverloadedCount > 0
            ? ". " + VerdictWords.Overloaded(band.OverloadedCount, band.PointCount).TrimEnd('.') : string.Empty);

    private static string Stands(AnalysisResult result, BandStatement band)
    {
        string face = result.Verdict.Trust == Verdicts.Trust.Untrustworthy ? ", at face value only" : string.Empty;
        return RequirementWords.Stands(result, band.Name) is not { } standing ? string.Empty
            : $"{AtLevel(result, result.Plan.Confidence)}. Requirement{face}: {standing}"
                + AtLevel(result, result.Plan.Rule?.Level);
    }

    private static IEnumerable<string> Told(FindingGroup group)
    {
        string head = $"{Weight(group.Severity)} ({PlainText.Of(group.Code)})";
        IEnumerable<string> told = group.CommonMessage is { } message
            ? [string.Join(", ", new[] { head, SpecimenList(group.Findings) }.Where(p => p.Length > 0)) + ": "
                + PlainText.Of(message)]
            : Several(group, head);
        return told.Append($"  Next: {PlainText.Of(group.NextStep)}");
    }

    // One head for a group, as it is counted once.
    private static IEnumerable<string> Several(FindingGroup group, string head) =>
        group.Findings.Select(f => (f.Specimen is { } name ? $"  {SpecimenLabel(name)}: " : "  ") + PlainText.Of(f.Message))
            .Prepend($"{head}: {SeveralFindings(group)}");

    /// <summary>" (95 %)", where what is claimed and what is decided have different levels.</summary>
    internal static string AtLevel(AnalysisResult result, Statistics.Confidence? level) =>
        level is { } own && result.Plan.Rule is { } rule && rule.Level.Level != result.Plan.Confidence.Level ? $" ({Level(own)})"
            : string.Empty;

    /// <summary>How much a finding weighs, in a word.</summary>
    public static string Weight(Severity severity) => severity switch
    {
        Severity.Fault => "Fault",
        Severity.Warning => "Warning",
        _ => "Note",
    };

    internal static string SeveralFindings(FindingGroup group) => $"{Count(group.Findings.Length, "finding")} of one kind:";

    /// <summary>
    /// The figures and rules behind the findings of a group: one sentence where they differ in numbers at most, else one for
    /// those that share it.
    /// </summary>
    internal static IEnumerable<string> Bases(FindingGroup group) => group.CommonBasis is { } common
        ? [$"Rests on: {common}"]
        : group.Findings.GroupBy(f => f.Basis)
            .Select(g => $"Rests on{(SpecimenList(g) is { Length: > 0 } pieces ? $", {pieces}" : string.Empty)}: {g.Key}");

    /// <summary>What a finding concerns: specimen, role, frequencies, size; empty where it concerns everything.</summary>
    public static string Concerns(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        string? of = finding.Specimen is { } specimen ? SpecimenLabel(specimen)
            : finding.Lot is { } lot ? LotLabel(lot) : null;
        string?[] parts =
        [
            of, finding.Role is { } role ? role.ToString().ToLowerInvariant() + " sweeps" : null,
            finding.Where.IsDefaultOrEmpty ? null : Bands(finding.Where), finding.Size is { } size ? Ratio(size.Value) : null,
        ];
        return string.Join("; ", parts.OfType<string>());
    }

    /// <summary>What the findings of a group concern; specimens that share the rest stand together.</summary>
    internal static IEnumerable<string> Concerns(FindingGroup group) =>
        group.Findings.GroupBy(f => Concerns(f with { Specimen = null, Lot = null }))
            .Select(g => (Specimens: SpecimenList(g), Others: g.Key))
            .Select(c => c.Specimens.Length == 0 ? c.Others : c.Others.Length == 0 ? c.Specimens : $"{c.Specimens}: {c.Others}")
            .Where(c => c.Length > 0);

    /// <summary>Whether a list of frequencies of these findings is cut short.</summary>
    internal static bool LeavesOutStretches(FindingGroup group) =>
        group.Findings.Any(f => !f.Where.IsDefault && f.Where.Length > MostBandsNamed);

    /// <summary>"A/A01, A/A02 and 3 more": the specimens that findings name, or nothing.</summary>
    internal static string SpecimenList(IEnumerable<Finding> findings)
    {
        string[] pieces = [.. findings.Where(f => f.Specimen is not null || f.Lot is not null)
            .Select(f => f.Specimen is { } name ? SpecimenLabel(name) : LotLabel(f.Lot!)).Distinct(StringComparer.Ordinal)];
        return Listed(pieces, MostSpecimensNamed);
    }

    internal static string Bands(ImmutableArray<FrequencyBand> bands) => Listed([.. bands.Select(Band)], MostBandsNamed);
}
