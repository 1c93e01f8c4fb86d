using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;

namespace SweepStats.Verdicts;

/// <summary>The decisions along the curve of one specimen.</summary>
internal sealed class CurveDecisions
{
    private readonly ShieldingCurve _curve;
    private readonly OneSidedLimits _limits;
    private readonly DecisionRule _rule;

    private CurveDecisions(ShieldingCurve curve, DecisionRule rule)
    {
        (_curve, _rule, _limits) = (curve, rule, new OneSidedLimits(curve));
        var search = new ConformanceSearch(_limits, rule.Level.Level);
        All = [.. curve.Readings.Select((reading, f) => Decide(reading, f, search))];
    }

    /// <summary>One for each frequency of the grid; null where nothing is asked.</summary>
    public ImmutableArray<FrequencyDecision?> All { get; }

    /// <summary>Frequencies where something is asked.</summary>
    public int Asked => All.Count(d => d is not null);

    public static CurveDecisions Of(ShieldingCurve curve, DecisionRule rule) => new(curve, rule);

    /// <summary>Whether it fails somewhere at a level.</summary>
    public bool FailsAt(double level) =>
        Enumerable.Range(0, All.Length).Any(f => All[f] is { Outcome: RequirementOutcome.Fails, Required: var wanted } && _limits.At(f, level).High < wanted.Value);

    private FrequencyDecision? Decide(ShieldingReading reading, int f, ConformanceSearch search)
    {
        if (_rule.Requirement.At(reading.Evidence.At) is not { } wanted)
        {
            return null;
        }

        if (reading.Evidence.OneSidedLow is null)
        {
            return new FrequencyDecision(reading.Evidence.At, wanted, RequirementOutcome.CannotTell, null);
        }

        (double low, double high) = _limits.At(f, _rule.Level.Level);
        bool met = _rule.IsMet(reading, low) == true;
        RequirementOutcome outcome = met ? RequirementOutcome.Meets
            : reading is not ShieldingReading.Measured ? Bounded(reading, low, wanted)
            : high < wanted.Value ? RequirementOutcome.Fails : RequirementOutcome.Undecided;
        return new FrequencyDecision(reading.Evidence.At, wanted, outcome, search.Of(reading, f, wanted.Value, (low, high)));
    }

    // A bound between requirement and acceptance limit shows that it is a matter of the guard band; one below shows nothing.
    private static RequirementOutcome Bounded(ShieldingReading reading, double low, Decibels wanted) =>
        low >= wanted.Value && reading.Evidence.OneSidedLow >= wanted ? RequirementOutcome.Undecided : RequirementOutcome.CannotTell;
}
