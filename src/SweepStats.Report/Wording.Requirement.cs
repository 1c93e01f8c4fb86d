using System.Globalization;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Report;

/// <content>How specimens stand to a requirement, and why it cannot be told.</content>
public static partial class Wording
{
    private const string GridCode = "grid-mismatch";
    private const string BeyondCode = "requirement-beyond";

    /// <summary>How one specimen stands to the requirement: "meets", "fails", "undecided" or "cannot be told"; null where none was stated.</summary>
    internal static string? Stands(AnalysisResult result, SpecimenName name) =>
        result.Verdict.Specimens.FirstOrDefault(s => s.Name == name) is { } specimen ? Stands(specimen.Outcome) : null;

    private static string Stands(RequirementOutcome outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        _ => "cannot be told",
    };

    /// <summary>"; 4 of 9 specimens meet it"; nothing where a single specimen is all there is.</summary>
    private static string Meeting(AnalysisResult result)
    {
        int meeting = result.Verdict.Specimens.Count(s => s.Outcome == RequirementOutcome.Meets);
        int all = result.Verdict.Specimens.Length;
        return all < 2 ? string.Empty
            : string.Create(CultureInfo.InvariantCulture, $"; {(meeting == 0 ? "none" : $"{meeting}")} of {all} specimens {(meeting < 2 ? "meets" : "meet")} it");
    }

    /// <summary>"; A/A02 fails by itself, …": specimens that fail where all together do not.</summary>
    private static string FailingAlone(AnalysisResult result)
    {
        string[] failing = [.. result.Verdict.Specimens.Where(s => s.Outcome == RequirementOutcome.Fails).Select(s => SpecimenLabel(s.Name))];
        string named = failing.Length > MostSpecimensNamed ? Count(failing.Length, "specimen") : string.Join(", ", failing);
        return failing.Length == 0 ? string.Empty
            : $"; {named} {(failing.Length == 1 ? "fails by itself" : "fail by themselves")}, among all {Plain(result.Verdict.Specimens.Length)} specimens together chance could do that";
    }

    private static string FailingReason(AnalysisResult result, string what)
    {
        FrequencyDecision[] asked = [.. result.Verdict.Specimens.SelectMany(s => s.Frequencies).OfType<FrequencyDecision>()];
        int failing = asked.Count(d => d.Outcome == RequirementOutcome.Fails);
        double most = result.Curves.SelectMany(c => c.Readings).OfType<ShieldingReading.Measured>()
            .Select(m => (result.Plan.Requirement?.At(m.Evidence.At)?.Value - m.Shielding.Value.Value) ?? double.NegativeInfinity)
            .DefaultIfEmpty(double.NegativeInfinity).Max();
        string by = double.IsFinite(most) && most > 0 ? $", by about {Ratio(most)} where most is missing" : string.Empty;
        return $"The {what} is below the requirement at {Plain(failing)} of {Count(asked.Length, "value")}{by}: more than chance does among so many.";
    }

    private static string CannotTellReason(AnalysisResult result)
    {
        List<string> reasons = [];
        ShieldingReading[] open = [.. Unanswered(result)];
        if (open.Any(r => r.State == ShieldingState.NoFloor))
        {
            reasons.Add("Without a floor only lower bounds are known, and somewhere they do not reach the requirement.");
        }

        if (open.Any(r => r is ShieldingReading.AtLeast { State: ShieldingState.Overloaded }))
        {
            reasons.Add("Somewhere the receiver was overloaded, which leaves only a bound, and it ends below the requirement: a reference without overload would tell.");
        }

        if (open.Any(r => r is ShieldingReading.AtLeast { State: not ShieldingState.NoFloor and not ShieldingState.Overloaded, Evidence.LeakageRules: false }))
        {
            reasons.Add("Somewhere the floor leaves only a bound, and it ends below the requirement: more dynamic range would tell.");
        }

        if (open.Any(r => r is ShieldingReading.AtLeast { Evidence.LeakageRules: true }))
        {
            reasons.Add("Somewhere leakage leaves only a bound, and it ends below the requirement: better isolation would tell.");
        }

        if (!result.Verdict.OverturnedBy.IsEmpty)
        {
            reasons.Add($"What the figures say could be overturned by a finding: {string.Join("; ", result.Verdict.OverturnedBy.Select(InPassing))}.");
        }

        if (open.Any(r => r is ShieldingReading.Unrepeated))
        {
            reasons.Add("Somewhere there are only single sweeps, which give no interval: repeats would tell.");
        }

        if (open.Any(r => r is ShieldingReading.Unreadable))
        {
            reasons.Add("Somewhere a reading allows no claim at all.");
        }

        if (result.Findings.Any(f => f.Code == GridCode))
        {
            reasons.Add("Frequencies that not all sweeps have are not analysed, so nothing is known about the requirement there.");
        }

        if (result.Findings.Any(f => f.Code == BeyondCode))
        {
            reasons.Add("The requirement reaches beyond the band that was analysed, and nothing is known about it there.");
        }

        return reasons.Count > 0 ? string.Join(' ', reasons) : "The requirement asks for nothing at the frequencies that were measured.";
    }

    /// <summary>Readings at which it cannot be told.</summary>
    private static IEnumerable<ShieldingReading> Unanswered(AnalysisResult result)
    {
        foreach (ShieldingCurve curve in result.Curves)
        {
            SpecimenOutcome? specimen = result.Verdict.Specimens.FirstOrDefault(s => s.Name == curve.Name);
            for (int f = 0; f < (specimen?.Frequencies.Length ?? 0); f++)
            {
                if (specimen!.Frequencies[f]?.Outcome == RequirementOutcome.CannotTell)
                {
                    yield return curve.Readings[f];
                }
            }
        }
    }
}
