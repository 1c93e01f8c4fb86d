using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Answer;

/// <summary>The rule of the decision against a requirement, and how probably it is met.</summary>
public static class DecisionWords
{
    // From here on only a bound of a probability is known.
    private const double TopOfLadder = 0.999;

    internal const string DecisionsCaption =
        "Frequencies that meet, fail, are undecided or cannot be told, each by itself, and where it is least probable that the "
        + "requirement is met. The number of "
        + "frequencies looked at is not allowed for here; the verdict allows for it before it says that a specimen fails.";

    internal static readonly string[] DecisionColumns =
        ["Specimen", "Meet", "Fail", "Undecided", "Cannot be told", "Least probability", "Where"];

    /// <summary>
    /// "Meets: the one-sided 95 % lower limit is at or above the requirement. Fails: …"; null where nothing is asked.
    /// </summary>
    public static string? DecisionRule(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Plan.Rule is not { } rule)
        {
            return null;
        }

        string guard = rule.GuardBand.Value > 0 ? $" and at least {Exact(rule.GuardBand.Value, "dB")} above it (guard band)"
            : string.Empty;
        string many = "Chance is allowed for in two steps (Holm): a specimen fails only after allowing for the number of its "
            + "frequencies, so single frequencies may fail where it is "
            + "undecided; all together fail only after allowing for the frequencies of all specimens, so one specimen may fail "
            + "by itself where all together are undecided.";
        return rule.IsSimpleAcceptance
            ? $"Meets: the estimate is at or above the requirement{guard}. Fails: the estimate is below the requirement. This "
                + "is simple acceptance: the risk of a wrong answer is shared, up to one half on either side; a lower bound "
                + $"counts only at the level of the intervals. {many}"
            : $"Meets: the one-sided {Level(rule.Level)} lower limit is at or above the requirement{guard}. Fails: the "
                + $"one-sided {Level(rule.Level)} upper limit is below the requirement. {many}";
    }

    /// <summary>The rule in one line for the console; the page has it in full. Null where nothing is asked.</summary>
    internal static string? DecisionRuleInBrief(AnalysisResult result) => result.Plan.Rule is not { } rule ? null
        : (rule.IsSimpleAcceptance ? "Rule: the estimate decides (simple acceptance)"
            : $"Rule: one-sided {Level(rule.Level)} limits decide")
            + (rule.GuardBand.Value > 0 ? $", guard band {Exact(rule.GuardBand.Value, "dB")}." : ".");

    /// <summary>How probably what is asked is met: "97.3 %", "> 99.9 %", "at least 96.2 %".</summary>
    internal static string Probability(ConformanceProbability probability) => probability switch
    {
        { Most: 1, Least: >= TopOfLadder and < 1 and var top } => $"> {Share(top)}",
        { Most: 1, Least: var least } => $"at least {Share(least)}",
        { Least: 0, Most: <= 1 - TopOfLadder + 1e-9 and var bottom } => $"< {ShareUp(bottom)}",
        { IsKnown: false, Most: var most } => $"at most {ShareUp(most)}",
        { Least: var known } => Share(known),
    };

    internal static IEnumerable<IReadOnlyList<string>> Decisions(AnalysisResult result) =>
        result.Verdict.Specimens.Where(s => s.Frequencies.Length > 0).Select(s =>
        (IReadOnlyList<string>)
        [
            SpecimenLabel(s.Name), Plain(s.Count(RequirementOutcome.Meets)), Plain(s.Count(RequirementOutcome.Fails)),
            Plain(s.Count(RequirementOutcome.Undecided)), Plain(s.Count(RequirementOutcome.CannotTell)),
            s.LeastProbable is { Probability: { } p } ? Probability(p) : Nothing,
            s.LeastProbable is not { } where ? Nothing : where.Probability is { Least: >= TopOfLadder } ? "everywhere"
                : Frequency(where.At),
        ]);

    /// <summary>" and its guard band of 1 dB", where one is stated.</summary>
    internal static string Guarded(AnalysisResult result) =>
        result.Plan.Rule is { GuardBand.Value: > 0 and var guard } ? $" and its guard band of {Exact(guard, "dB")}"
            : string.Empty;

    // A bound from above is rounded up; all else down, so that 94.96 % is never shown as 95 %.
    private static string ShareUp(double share) => $"{Plain(Math.Ceiling((share * 1000) - 1e-9) / 10)} %";

    private static string Share(double share) => $"{Plain(Math.Floor((share * 1000) + 1e-9) / 10)} %";
}
