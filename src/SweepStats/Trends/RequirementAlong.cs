using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Trends;

/// <summary>All frequencies at which something is asked, held against it along the ordered factor.</summary>
internal sealed class RequirementAlong
{
    private readonly DecisionRule _rule;
    private readonly AskedFrequency?[] _at;
    private readonly FactorLevel?[] _levels;
    private readonly ImmutableArray<string>[] _codes;
    private readonly bool _gaps, _faults;
    private readonly ImmutableArray<double> _values;

    /// <summary>Holds every frequency against the rule; a finding that is a fault leaves no frequency decided.</summary>
    public RequirementAlong(
        DecisionRule rule, FactorDesign design, FrequencyGrid grid, FactorLevel?[] levels, ImmutableArray<Finding> findings)
    {
        (_rule, _levels, _values) = (rule, levels, design.Values);
        _gaps = findings.Any(f => f.LeavesFrequenciesOut);
        _faults = findings.Any(f => f.Severity == Severity.Fault);
        Decibels?[] required = [.. Enumerable.Range(0, grid.Count).Select(f => rule.Requirement.At(grid[f]))];
        Count = required.Count(r => r is not null);
        var biases = new FrequencyBias(findings);
        _codes = new ImmutableArray<string>[grid.Count];
        _at = new AskedFrequency?[grid.Count];
        for (int f = 0; f < grid.Count; f++)
        {
            (Bias farthest, _codes[f]) = biases.At(grid[f]);
            // What is not to be trusted could lie anywhere.
            farthest = _faults ? Bias.Unknown : farthest;
            _at[f] = required[f] is { } asked
                ? new AskedFrequency(levels[f], _values, rule, new(asked.Value, Count), farthest) : null;
        }
    }

    /// <summary>Frequencies at which something is asked.</summary>
    public int Count { get; }

    private IEnumerable<int> Asked => Enumerable.Range(0, _at.Length).Where(f => _at[f] is not null);

    /// <summary>One frequency; null where nothing is asked there.</summary>
    public AskedFrequency? At(int f) => _at[f];

    /// <summary>
    /// How all frequencies together stand at a value; null where nothing is asked, or nothing is known anywhere.
    /// </summary>
    public RequirementOutcome? OutcomeAt(double value)
    {
        RequirementOutcome[] all = [.. Asked.Select(f => _at[f]!.OutcomeAt(value))];
        return all.Length == 0 ? null
            : _faults ? RequirementOutcome.CannotTell
            : all.Contains(RequirementOutcome.Fails) ? RequirementOutcome.Fails
            : all.Contains(RequirementOutcome.CannotTell) ? RequirementOutcome.CannotTell
            : all.Contains(RequirementOutcome.Undecided) ? RequirementOutcome.Undecided
            : _gaps ? RequirementOutcome.CannotTell : RequirementOutcome.Meets;
    }

    /// <summary>What is told of all of them; null where nothing is asked at any.</summary>
    public TrendRequirement? Told(TrendFrequencies at, bool lotsApart, FactorDesign design)
    {
        if (Count == 0)
        {
            return null;
        }

        double?[] met = [.. Asked.Select(f => _at[f]!.MetUpTo)];
        string[] overturned =
            [.. Asked.Where(f => _values.Any(_at[f]!.IsOverturnedAt)).SelectMany(f => _codes[f]).Distinct()
                .Order(StringComparer.Ordinal)];
        double? upTo = _gaps || met.Contains(null) ? null : met.Min();
        return new TrendRequirement
        {
            Rule = _rule,
            Frequencies = Count,
            ByGroups = Asked.Count(f => _levels[f] is { Between: false }),
            Hidden = Asked.Count(f => at.Bounds[f].Contains(true)),
            MetUpTo = upTo,
            NotMetFrom = Asked.Select(f => _at[f]!.NotMetFrom).Min(),
            DecidedAt = _faults || Array.TrueForAll(_levels, l => l is null) ? null : at.Grid[Deciding(met)],
            Obstacle = _faults ? TrendObstacle.Faults : lotsApart ? TrendObstacle.LotsApart
                : Obstacle(at, upTo, overturned.Length > 0, design),
            OverturnedBy = [.. overturned],
        };
    }

    // Which frequency ends it first; of several the one with the least to spare there.
    private int Deciding(double?[] met)
    {
        double ends = met.Min(m => m ?? double.NegativeInfinity);
        double value = double.IsFinite(ends) ? ends : _values[0];
        return Asked.Zip(met).Where(f => (f.Second ?? double.NegativeInfinity) == ends)
            .MinBy(f => _at[f.First]!.SpareAt(value)).First;
    }

    private TrendObstacle Obstacle(TrendFrequencies at, double? upTo, bool overturned, FactorDesign design)
    {
        bool Anywhere(Func<int, bool> holds) => Asked.Any(holds);
        bool finite(int f) => Array.TrueForAll(at.Values[f], double.IsFinite);
        return upTo == _values[^1] || design.Lack != TrendLack.None ? TrendObstacle.None
            : Anywhere(f => _levels[f] is null && !at.IsSharedKnown(f)) ? TrendObstacle.ReferenceOnce
            : Anywhere(f => _levels[f] is null && finite(f) && !at.Bounds[f].Contains(true)) ? TrendObstacle.NoRepeats
            : Anywhere(f =>
                at.Bounds[f].Contains(true) && _values.Any(v => _at[f]!.OutcomeAt(v) == RequirementOutcome.CannotTell))
                ? TrendObstacle.Hidden
            : overturned ? TrendObstacle.Overturned
            : _gaps ? TrendObstacle.FrequenciesLeftOut : TrendObstacle.None;
    }
}
