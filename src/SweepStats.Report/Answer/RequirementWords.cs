using SweepStats.Doubts;
using SweepStats.Report.Findings;
using SweepStats.Report.Screens;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Answer;

/// <summary>How specimens stand to a requirement, and why it cannot be told.</summary>
internal static class RequirementWords
{
    private const string LeakageCode = "leakage";
    private const string GridCode = "grid-mismatch";
    private const string BeyondCode = "requirement-beyond";

    /// <summary>
    /// How one specimen stands to the requirement: "meets", "fails", "undecided" or "cannot be told"; null where none was stated.
    /// Under a fault none is said to meet.
    /// </summary>
    internal static string? Stands(AnalysisResult result, SpecimenName name) =>
        result.Verdict.Specimens.FirstOrDefault(s => s.Name == name) is not { } specimen ? null
            : specimen.Outcome == RequirementOutcome.Meets && VerdictWords.NothingRelied(result) ? "not shown"
            : Stands(specimen.Outcome);

    private static string Stands(RequirementOutcome outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        _ => "cannot be told",
    };

    /// <summary>
    /// "; of 12 specimens 3 meet it, 2 fail, 7 are undecided"; nothing where a single specimen is all there is.
    /// </summary>
    internal static string Standings(AnalysisResult result)
    {
        int all = result.Verdict.Specimens.Length;
        if (all < 2 || VerdictWords.NothingRelied(result))
        {
            return string.Empty;
        }

        int Counted(RequirementOutcome outcome) => result.Verdict.Specimens.Count(s => s.Outcome == outcome);
        int meet = Counted(RequirementOutcome.Meets), fail = Counted(RequirementOutcome.Fails);
        int open = Counted(RequirementOutcome.Undecided), silent = Counted(RequirementOutcome.CannotTell);
        string[] parts =
        [
            meet > 0 ? $"{Plain(meet)} {(meet == 1 ? "meets" : "meet")} it" : "none is shown to meet it",
            fail > 0 ? $"{Plain(fail)} {(fail == 1 ? "fails" : "fail")}{FailingAlone(result)}" : string.Empty,
            open > 0 ? $"{Plain(open)} {(open == 1 ? "is" : "are")} undecided" : string.Empty,
            silent > 0 ? $"of {Plain(silent)} it cannot be told" : string.Empty,
        ];
        return $"; of {Plain(all)} specimens {string.Join(", ", parts.Where(p => p.Length > 0))}";
    }

    /// <summary>" (A/A02; among all together chance could do that)": who fails by itself where all together do not.</summary>
    private static string FailingAlone(AnalysisResult result)
    {
        string[] failing =
            [.. result.Verdict.Specimens.Where(s => s.Outcome == RequirementOutcome.Fails).Select(s => SpecimenLabel(s.Name))];
        return result.Verdict.Requirement == RequirementOutcome.Fails ? string.Empty
            : $" by {(failing.Length == 1 ? "itself" : "themselves")} ({Listed(failing, FirstScreenWords.NamesOnScreen)}; among "
                + "all together chance could do that)";
    }

    internal static string FailingReason(AnalysisResult result, bool simple)
    {
        int asked = result.Verdict.Specimens.SelectMany(s => s.Frequencies).OfType<FrequencyDecision>().Count();
        double[] missing = [.. Decided(result, RequirementOutcome.Fails)
            .Select(r => result.Plan.Requirement!.At(r.Evidence.At)!.Value.Value
                - (r is ShieldingReading.Measured m ? m.Shielding.Value.Value : double.NaN))];
        double most = missing.Where(double.IsFinite).DefaultIfEmpty(0).Max();
        string by = most > 0 ? $"; there up to {Ratio(most)} are missing" : string.Empty;
        string chance = simple ? " The estimate decides, so this may be chance."
            : asked == 1 ? string.Empty : " That is more than chance does among so many.";
        return $"The {(simple ? "estimate" : "upper limit")} is below the requirement at {Plain(missing.Length)} of "
            + $"{Count(asked, "value")}{by}.{chance}";
    }

    internal static string CannotTellReason(AnalysisResult result)
    {
        if (UndecidedWords.Misleading(result).ToList() is { Count: > 0 } misleading)
        {
            // Whoever makes more range because a placement was swept without its specimen works in vain.
            return "Settle first what was found; its next step stands below: "
                + $"{string.Join("; ", misleading.Select(CheckWords.InPassing))}.";
        }

        // A plate over the reference: what follows from either of them leads astray.
        if (result.Findings.FirstOrDefault(f => f is { Code: LeakageCode, Severity: Checks.Severity.Fault }) is { } exchanged)
        {
            return exchanged.NextStep;
        }

        string reasons = string.Join(' ', [.. OpenReasons(result), .. BandReasons(result)]);
        return reasons.Length > 0 ? reasons : "The requirement asks for nothing at the frequencies that were measured.";
    }

    // What keeps readings from telling.
    private static IEnumerable<string> OpenReasons(AnalysisResult result)
    {
        ShieldingReading[] open = [.. Decided(result, RequirementOutcome.CannotTell)];
        ShieldingReading[] bounds = [.. open.OfType<ShieldingReading.AtLeast>()
            .Where(r => r.Evidence.OneSidedLow < result.Plan.Requirement?.At(r.Evidence.At))];
        bool single = open.Any(
            r => r is ShieldingReading.Unrepeated || (r is ShieldingReading.AtLeast && r.Evidence.OneSidedLow is null));
        return
        [
            .. bounds.Select(EndsBelow).Distinct().Order(),
            .. result.Verdict.OverturnedBy.IsEmpty ? Array.Empty<string>()
                : ["Settle first what could overturn the figures; its next step stands below: "
                    + $"{string.Join("; ", result.Verdict.OverturnedBy.Select(CheckWords.InPassing))}."],
            .. single ? ["Repeat the sweeps: single ones decide nothing."] : Array.Empty<string>(),
            .. open.OfType<ShieldingReading.Unreadable>().Select(r => r.Reason).Distinct().Order(),
        ];
    }

    private static IEnumerable<string> BandReasons(AnalysisResult result)
    {
        if (result.Findings.Any(f => f.Code == GridCode && AskedWithin(result, f)))
        {
            yield return
                "Frequencies that not all sweeps have are not analysed, so nothing is known about the requirement there.";
        }

        if (result.Findings.Any(f => f.Code == BeyondCode))
        {
            yield return "The requirement reaches beyond the band that was analysed, and nothing is known about it there.";
        }
    }

    private static bool AskedWithin(AnalysisResult result, Checks.Finding finding) =>
        finding.Where.IsDefaultOrEmpty || finding.Where.Any(
            w => result.Plan.Requirement?.At(w.Start) is not null || result.Plan.Requirement?.At(w.Stop) is not null);

    /// <summary>What would tell at a bound that ends below the requirement.</summary>
    private static string EndsBelow(ShieldingReading reading)
    {
        ReadingEvidence seen = reading.Evidence;
        return reading.State == ShieldingState.NoFloor
            ? "Take floor sweeps: without a floor only lower bounds are known, and somewhere they do not reach the requirement."
            : reading.State == ShieldingState.Overloaded
            ? "Take sweeps without overload: somewhere the receiver was overloaded, and the bound that is left ends below the "
                + "requirement."
            : seen.LeakageRules ? "Isolate better: somewhere leakage leaves only a bound, and it ends below the requirement."
            : seen.HiddenBehindPlate ? "Take more plate sweeps, or reference and plate with more power: somewhere the noise of "
                + "the plate leaves only a bound, and it ends below the requirement."
            : seen.Ambient ? "Switch off what transmits: somewhere it leaves only a bound, and it ends below the requirement."
            : seen.Doubts.HasFlag(ReadingDoubts.CoveredAtBottom)
            ? "Lower the bottom of the display: somewhere it leaves only a bound, and it ends below the requirement."
            : seen.Doubts.HasFlag(ReadingDoubts.FloorMoved)
            ? "Take floor sweeps again: somewhere covered noise leaves only a bound, and it ends below the requirement."
            : "Make more dynamic range: somewhere the floor leaves only a bound, and it ends below the requirement.";
    }

    /// <summary>Readings at which the outcome is so.</summary>
    private static IEnumerable<ShieldingReading> Decided(AnalysisResult result, RequirementOutcome outcome)
    {
        foreach (ShieldingCurve curve in result.Curves)
        {
            SpecimenOutcome? specimen = result.Verdict.Specimens.FirstOrDefault(s => s.Name == curve.Name);
            for (int f = 0; f < (specimen?.Frequencies.Length ?? 0); f++)
            {
                if (specimen!.Frequencies[f]?.Outcome == outcome)
                {
                    yield return curve.Readings[f];
                }
            }
        }
    }
}
