using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Verdicts;

/// <summary>Draws the verdict by a rule that a reader can follow.</summary>
/// <remarks>
/// Trust: a fault makes the measurement untrustworthy; a warning limits it, and so does a doubt that matters and could not be
/// tested; notes do not count. A decision that a finding could overturn beyond the interval is none. Requirement: "meets" needs
/// the one-sided lower limit at or above the requirement, and the guard band where one is stated, at every frequency
/// (intersection–union: no correction due). "Fails" is a claim about some frequency among many, so Holm's correction is due: some
/// upper limit of one-sided level 1 − α/m lies below the requirement, α being one less the level of the rule and m the number of
/// frequencies asked about, over all specimens. Single frequencies are decided before that correction. Holm 1979, Scandinavian
/// Journal of Statistics 6, 65; JCGM 106:2012, 8.
/// </remarks>
public static class Judge
{
    /// <summary>The verdict on findings and curves.</summary>
    /// <param name="findings">What the checks found.</param>
    /// <param name="curves">The specimens.</param>
    /// <param name="rule">What is asked; null where nothing is.</param>
    /// <param name="untested">Doubts that matter and that nothing could test.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static Verdict Of(
        ImmutableArray<Finding> findings, ImmutableArray<ShieldingCurve> curves, DecisionRule? rule,
        ImmutableArray<UntestedDoubt> untested, int threads = 1)
    {
        Trust trust = findings.Any(f => f.Severity == Severity.Fault) ? Trust.Untrustworthy
            : !untested.IsEmpty || findings.Any(f => f.Severity == Severity.Warning) ? Trust.Limited : Trust.Trustworthy;
        if (rule is null)
        {
            return new Verdict(trust, null, []) { Untested = untested };
        }

        CurveDecisions[] decided = SideBySide.Of(curves.Length, threads, i => CurveDecisions.Of(curves[i], rule, findings));
        bool gaps = findings.Any(f => f.LeavesFrequenciesOut);
        RequirementOutcome For(params CurveDecisions[] some) => Outcome(some, rule) switch
        {
            RequirementOutcome.Meets when gaps => RequirementOutcome.CannotTell,
            RequirementOutcome outcome => outcome,
        };
        return new Verdict(trust, For(decided),
            [.. curves.Zip(decided, (c, d) => new SpecimenOutcome(c.Name, For(d)) { Frequencies = d.All })])
        {
            Untested = untested,
            OverturnedBy = [.. decided.SelectMany(d => d.All.OverturnedBy).Distinct()
                .Order(StringComparer.Ordinal)],
        };
    }

    private static RequirementOutcome Outcome(CurveDecisions[] curves, DecisionRule rule)
    {
        int asked = curves.Sum(c => c.All.Asked);
        bool Anywhere(RequirementOutcome outcome) => curves.Any(c => c.All.Counted(outcome) > 0);
        if (asked == 0)
        {
            return RequirementOutcome.CannotTell;
        }

        // Holm's first step decides whether anything is rejected at all: the smallest p-value against α/m, here as a one-sided
        // limit of that level.
        double strict = 1 - ((1 - rule.Level.Level) / asked);
        return Anywhere(RequirementOutcome.Fails) && curves.Any(c => c.FailsAt(strict)) ? RequirementOutcome.Fails
            : Anywhere(RequirementOutcome.CannotTell) ? RequirementOutcome.CannotTell
            : Anywhere(RequirementOutcome.Undecided) || Anywhere(RequirementOutcome.Fails) ? RequirementOutcome.Undecided
            : RequirementOutcome.Meets;
    }
}
