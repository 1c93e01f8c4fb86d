using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Report.Findings;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;

namespace SweepStats.Report.Answer;

/// <summary>What would decide a requirement that is not decided, and what to do about one that is not shown to be met.</summary>
internal static class UndecidedWords
{
    // From here on a budget says too that more sweeps do not help.
    private const double MostlyStated = 0.5;

    private static readonly string[] MovingCodes = ["drift", "odd-sweep"];

    /// <summary>What to do about the requirement; null where nothing is asked or it is met.</summary>
    internal static string? RequirementStep(AnalysisResult result) => result.Verdict.Requirement switch
    {
        null or RequirementOutcome.Meets => null,
        RequirementOutcome.Fails => (result.Verdict.Trust == Trust.Untrustworthy ? "Mend the faults first. " : string.Empty)
            + $"Requirement not met: {LookFirst(result)}improve what falls short and measure it again; more sweeps of the same "
            + $"do not help. {VerdictWords.OutcomeReason(result)}",
        RequirementOutcome.Undecided => $"Requirement undecided: {VerdictWords.OutcomeReason(result)}",
        _ => $"Whether the requirement is met cannot be told: {VerdictWords.OutcomeReason(result)}",
    };

    // An overloaded receiver, and what transmits, make the shielding read too small; the cloth may be in order.
    private static string LookFirst(AnalysisResult result)
    {
        Finding? alone = result.Findings.FirstOrDefault(f => f.Code == "late-transmitter");
        bool othersFirst = result.Findings.Any(f => f.Severity == Severity.Warning && f != alone);
        return (alone is null ? string.Empty : "look first whether something transmits at "
                + $"{PrintedFrequency.Band(alone.Where[0])}, where the covered level stands alone. Else ")
            + (othersFirst || !result.Verdict.Untested.Contains(UntestedDoubt.Overload) ? string.Empty
                : "first see by linearity sweeps that the receiver was not overloaded, since that reads too little. Then ");
    }

    internal static string UndecidedReason(AnalysisResult result)
    {
        bool simple = result.Plan.Rule is { IsSimpleAcceptance: true };
        string[] causes = [.. UndecidedCauses(result).Distinct().Order().Select(cause => cause switch
        {
            UndecidedBy.GuardBand => simple ? "Somewhere the estimate lies in the guard band: repeats may move it either way."
                : "Lower the guard band or improve the specimen: somewhere the interval lies in the guard band, and repeats do "
                    + "not change that.",
            UndecidedBy.StatedErrors => "Make the stated errors smaller: somewhere they alone are larger than the distance to "
                + "the requirement, and repeats do not help.",
            _ => NarrowedByRepeats(result),
        })];
        bool failing = result.Verdict.Specimens.Any(
            s => s.Count(RequirementOutcome.Fails) > 0 && s.Count(RequirementOutcome.Undecided) == 0);
        string chance = $"{ToRepeat(result)}: somewhere the {(simple ? "estimate" : "upper limit")} is below the requirement, "
            + "but among so many frequencies it may be chance.";
        IEnumerable<string> steps = failing ? causes.Where(c => c != NarrowedByRepeats(result)).Prepend(chance)
            : causes.DefaultIfEmpty(NarrowedByRepeats(result));
        return string.Join(' ', [.. SettledFirst(result), .. steps]);
    }

    // What moves the level while it is measured is no scatter that repeats would narrow.
    private static string[] SettledFirst(AnalysisResult result)
    {
        string[] moving =
        [
            .. Misleading(result),
            .. MovingCodes.Where(code => result.Findings.Any(f => f.Code == code && f.Severity != Severity.Note)),
        ];
        return moving.Length == 0 ? []
            : [$"Settle first what was found beside it ({string.Join("; ", moving.Select(CheckWords.InPassing))}): it can move "
                + "the figures that decide."];
    }

    // Codes of findings that others only follow from.
    internal static IEnumerable<string> Misleading(AnalysisResult result) =>
        result.Findings.Where(f => f.Misleads && f.Severity != Severity.Note).Select(f => f.Code).Distinct();

    private static string NarrowedByRepeats(AnalysisResult result)
    {
        string guard = result.Plan.Rule is { GuardBand.Value: > 0 } ? " or its guard band" : string.Empty;
        string narrowing = RepeatsArePlacements(result)
            ? "more placements of each specimen narrow what scatter makes of it, more sweeps of the same placement do not"
            : "more repeats narrow what scatter makes of it";
        return $"Somewhere the requirement{guard} lies inside the interval: {narrowing}, and the budget names the rest.";
    }

    private static string ToRepeat(AnalysisResult result) =>
        RepeatsArePlacements(result) ? "Put the specimens on once more and sweep them again" : "Repeat the sweeps";

    private static bool RepeatsArePlacements(AnalysisResult result)
    {
        var open = result.Verdict.Specimens.Where(s => s.Outcome != RequirementOutcome.Meets).Select(s => s.Name).ToHashSet();
        return result.Curves.Any(c => c.PlacementCount > 1 && open.Contains(c.Name));
    }

    private static IEnumerable<UndecidedBy> UndecidedCauses(AnalysisResult result)
    {
        if (result.Plan.Rule is not { } rule)
        {
            yield break;
        }

        var stated = new SystematicError(result.Plan.Uncertainties);
        foreach (ShieldingCurve curve in result.Curves)
        {
            SpecimenOutcome? specimen = result.Verdict.Specimens.FirstOrDefault(s => s.Name == curve.Name);
            for (int f = 0; f < (specimen?.Frequencies.Length ?? 0); f++)
            {
                if (specimen!.Frequencies[f] is { Outcome: RequirementOutcome.Undecided, Required.Value: var wanted })
                {
                    yield return Cause(curve.Readings[f], wanted, rule, stated);
                }
            }
        }
    }

    // Repeats narrow an interval around its estimate down to what is stated, and not further.
    private static UndecidedBy Cause(ShieldingReading reading, double wanted, DecisionRule rule, SystematicError stated)
    {
        if (reading is not ShieldingReading.Measured { Shielding: var shielding })
        {
            return UndecidedBy.Repeats;
        }

        double accepted = wanted + rule.GuardBand.Value;
        (double low, double high) = rule.IsSimpleAcceptance ? (shielding.Value.Value, shielding.Value.Value)
            : (shielding.Low.Value, shielding.High.Value);
        if (low >= wanted && high < accepted)
        {
            return UndecidedBy.GuardBand;
        }

        double share =
            Math.Pow(stated.StandardUncertainty / (reading.Evidence.StandardUncertaintyDb ?? double.PositiveInfinity), 2);
        double reach = stated.StandardUncertainty > 0 ? stated.Quantile(rule.Level.Level) : 0;
        return share >= MostlyStated && shielding.Value.Value + reach >= wanted && shielding.Value.Value - reach < accepted
            ? UndecidedBy.StatedErrors : UndecidedBy.Repeats;
    }

    private enum UndecidedBy
    {
        GuardBand,
        StatedErrors,
        Repeats,
    }
}
