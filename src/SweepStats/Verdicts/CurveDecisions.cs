using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Storage;

namespace SweepStats.Verdicts;

/// <summary>The decisions along the curve of one specimen.</summary>
internal sealed class CurveDecisions
{
    private readonly OneSidedLimits _limits;
    private readonly DecisionRule _rule;

    private readonly SpecimenBiases _biases;

    private CurveDecisions(ShieldingCurve curve, DecisionRule rule, SpecimenBiases biases)
    {
        (_rule, _limits, _biases) = (rule, new OneSidedLimits(curve), biases);
        var search = new ConformanceSearch(_limits, rule.Level.Level);
        FrequencyDecision?[] all = [.. curve.Readings.Select((reading, f) => Decide(reading, f, search))];
        All = FrequencyDecisions.Of(all, curve.Levels?.Store ?? RowStore.InMemory);
    }

    /// <summary>One for each frequency of the grid; null where nothing is asked.</summary>
    public FrequencyDecisions All { get; }

    /// <param name="curve">The specimen.</param>
    /// <param name="rule">What is asked.</param>
    /// <param name="findings">
    /// What the checks found: what may shift the result beyond its interval can overturn a decision.
    /// </param>
    public static CurveDecisions Of(ShieldingCurve curve, DecisionRule rule, ImmutableArray<Finding> findings) =>
        new(curve, rule, new SpecimenBiases(curve.Name, findings));

    /// <summary>Whether it fails somewhere at a level.</summary>
    public bool FailsAt(double level) =>
        Enumerable.Range(0, All.Length).Any(
            f => All[f] is { Outcome: RequirementOutcome.Fails, Required: var wanted } && _limits.High(f, level) < wanted.Value);

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

        double low = _limits.Low(f, _rule.Level.Level);
        // What meets needs no upper limit.
        bool met = _rule.IsMet(reading, low) == true;
        double high = met ? double.PositiveInfinity : _limits.High(f, _rule.Level.Level);
        RequirementOutcome outcome = met ? RequirementOutcome.Meets
            : reading is not ShieldingReading.Measured ? Bounded(reading, low, wanted)
            : high < wanted.Value ? RequirementOutcome.Fails : RequirementOutcome.Undecided;
        return Overturned(outcome, reading.Evidence.At,
            new Interval(low - wanted.Value - _rule.GuardBand.Value, high - wanted.Value)) is { } code
            ? new FrequencyDecision(reading.Evidence.At, wanted, RequirementOutcome.CannotTell, null) { OverturnedBy = code }
            : new FrequencyDecision(reading.Evidence.At, wanted, outcome,
                search.Of(reading, f, wanted.Value, new Interval(low, high)));
    }

    // The code of the finding that moves the shielding farthest, where all together could move it to the other side of the
    // requirement; null where they could not. Several may come true together. The margin is that of the limits over what is
    // asked.
    private string? Overturned(RequirementOutcome outcome, Hertz at, Interval margin)
    {
        bool meets = outcome == RequirementOutcome.Meets;
        if ((!meets && outcome != RequirementOutcome.Fails) || _biases.None)
        {
            return null;
        }

        FindingBias[] here = [.. _biases.At(at).Where(f => Moves(f, meets) > 0)];
        double all = here.Sum(f => Moves(f, meets));
        return here.Length > 0 && (meets ? margin.Low < all : -margin.High <= all) ? here.MaxBy(f => Moves(f, meets)).Code : null;
    }

    private static double Moves(FindingBias finding, bool meets) => meets ? finding.Bias.LowerByDb : finding.Bias.HigherByDb;

    // A bound between requirement and acceptance limit shows that it is a matter of the guard band; one below shows nothing.
    private static RequirementOutcome Bounded(ShieldingReading reading, double low, Decibels wanted) =>
        low >= wanted.Value && reading.Evidence.OneSidedLow >= wanted ? RequirementOutcome.Undecided
            : RequirementOutcome.CannotTell;
}
