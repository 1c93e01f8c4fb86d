using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Verdicts;

/// <summary>Draws the verdict by a rule that a reader can follow.</summary>
/// <remarks>
/// Trust: a fault makes the measurement untrustworthy, a warning limits it, notes do not count.
/// Requirement: "meets" needs the one-sided lower limit at or above the requirement at every frequency (intersection–union: no correction due). "Fails" is a
/// claim about some frequency among many, so Holm's correction is due: some two-sided upper limit lies below the requirement and its one-sided p-value holds
/// after it. Holm 1979, Scandinavian Journal of Statistics 6, 65.
/// </remarks>
public static class Judge
{
    /// <summary>The verdict on findings and curves.</summary>
    public static Verdict Of(ImmutableArray<Finding> findings, ImmutableArray<ShieldingCurve> curves, Requirement? requirement, Confidence confidence)
    {
        Trust trust = findings.Any(f => f.Severity == Severity.Fault) ? Trust.Untrustworthy
            : findings.Any(f => f.Severity == Severity.Warning) ? Trust.Limited : Trust.Trustworthy;
        return new Verdict(trust, requirement is null ? null : Outcome(curves, requirement, confidence));
    }

    private static RequirementOutcome? Outcome(ImmutableArray<ShieldingCurve> curves, Requirement requirement, Confidence confidence)
    {
        bool asked = false, meets = true, blind = false;
        double smallest = 1;
        int compared = 0;
        foreach (ShieldingReading reading in curves.SelectMany(c => c.Readings))
        {
            if (requirement.At(reading.Evidence.At) is not { } wanted)
            {
                continue;
            }

            asked = true;
            compared++;
            bool reached = reading.Evidence.OneSidedLow >= wanted;
            meets &= reached;
            blind |= !reached && reading is not ShieldingReading.Measured;
            smallest = Math.Min(smallest, ChanceOfMeeting(reading, wanted));
        }

        if (!asked)
        {
            return RequirementOutcome.CannotTell;
        }

        // Holm's first step decides whether anything is rejected at all.
        return meets ? RequirementOutcome.Meets
            : smallest * compared < 1 - confidence.Level ? RequirementOutcome.Fails
            : blind ? RequirementOutcome.CannotTell : RequirementOutcome.Undecided;
    }

    // One-sided p-value of "the requirement is met"; 1 where the interval does not even lie below it.
    private static double ChanceOfMeeting(ShieldingReading reading, Decibels wanted)
    {
        if (reading is not ShieldingReading.Measured { Shielding: var shielding } || shielding.High >= wanted
            || reading.Evidence is not { StandardUncertaintyDb: > 0 and { } u, DegreesOfFreedom: { } dof })
        {
            return 1;
        }

        return StudentT.UpperTail((wanted - shielding.Value).Value / u, dof);
    }
}
