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
/// claim about some frequency among many, so Holm's correction is due: some upper limit of one-sided level 1 − α/m lies below the requirement, m being
/// the number of frequencies asked about, over all specimens. Holm 1979, Scandinavian Journal of Statistics 6, 65.
/// </remarks>
public static class Judge
{
    /// <summary>The verdict on findings and curves.</summary>
    public static Verdict Of(ImmutableArray<Finding> findings, ImmutableArray<ShieldingCurve> curves, Requirement? requirement, Confidence confidence)
    {
        Trust trust = findings.Any(f => f.Severity == Severity.Fault) ? Trust.Untrustworthy
            : findings.Any(f => f.Severity == Severity.Warning) ? Trust.Limited : Trust.Trustworthy;
        if (requirement is null)
        {
            return new Verdict(trust, null, []);
        }

        // Frequencies that some sweep lacks were not looked at: what is met at the others is not met everywhere.
        bool gaps = findings.Any(f => f.Code == "grid-mismatch");
        RequirementOutcome For(ImmutableArray<ShieldingCurve> some) => Outcome(some, requirement, confidence) switch
        {
            RequirementOutcome.Meets when gaps => RequirementOutcome.CannotTell,
            RequirementOutcome outcome => outcome,
        };
        return new Verdict(trust, For(curves), [.. curves.Select(c => new SpecimenOutcome(c.Name, For([c])))]);
    }

    private static RequirementOutcome Outcome(ImmutableArray<ShieldingCurve> curves, Requirement requirement, Confidence confidence)
    {
        int asked = 0;
        bool meets = true, blind = false, below = false;
        foreach (ShieldingReading reading in curves.SelectMany(c => c.Readings))
        {
            if (requirement.At(reading.Evidence.At) is not { } wanted)
            {
                continue;
            }

            asked++;
            bool reached = reading.Evidence.OneSidedLow >= wanted;
            meets &= reached;
            blind |= !reached && reading is not ShieldingReading.Measured;
            below |= IsBelow(reading, wanted);
        }

        return asked == 0 ? RequirementOutcome.CannotTell
            : meets ? RequirementOutcome.Meets
            : below && FailsSomewhere(curves, requirement, (confidence, asked)) ? RequirementOutcome.Fails
            : blind ? RequirementOutcome.CannotTell : RequirementOutcome.Undecided;
    }

    private static bool IsBelow(ShieldingReading reading, Decibels wanted) =>
        reading is ShieldingReading.Measured { Shielding: var shielding } && shielding.High < wanted;

    // Holm's first step decides whether anything is rejected at all: the smallest p-value against α/m, here as a one-sided limit of that level.
    private static bool FailsSomewhere(ImmutableArray<ShieldingCurve> curves, Requirement requirement, (Confidence Confidence, int Asked) family)
    {
        double oneSided = (1 - family.Confidence.Level) / family.Asked;
        var strict = new Confidence(1 - Math.Min(2 * oneSided, 1 - family.Confidence.Level));
        foreach (ShieldingCurve curve in curves)
        {
            ImmutableArray<ReadingEstimator> estimators = curve.Levels?.Estimators(strict) ?? [];
            for (int f = 0; f < curve.Readings.Length && !estimators.IsEmpty; f++)
            {
                if (requirement.At(curve.Readings[f].Evidence.At) is { } wanted && IsBelow(curve.Readings[f], wanted) && curve.Levels!.Ends(f, estimators, curve.Readings[f].Evidence.Ambient).High < wanted.Value)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
