namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds the phase that belongs to a level: the one whose name tells the same trace, else the only phase beside the only level. A
/// phase whose unit
/// the header does not state is left: degrees and radians cannot be told apart by their size. So is one that is 0 in every row,
/// as scalar
/// instruments fill it in.
/// </summary>
internal sealed class PhaseSearch
{
    private readonly TableSight _table;
    private readonly ImmutableArray<PhaseName> _names;
    private readonly ImmutableArray<int> _levels;
    private readonly Dictionary<string, int> _levelOf;
    private readonly ImmutableArray<PhaseColumn> _phases;
    private readonly ImmutableArray<PhaseColumn> _pairs;
    private readonly Dictionary<string, PhaseColumn> _phaseOf;
    private readonly Dictionary<string, PhaseColumn> _pairOf;

    /// <param name="table">The table.</param>
    /// <param name="names">Its columns.</param>
    /// <param name="frequency">Place of the frequency column from 0.</param>
    public PhaseSearch(TableSight table, ImmutableArray<ColumnName> names, int frequency)
    {
        (_table, _names) = (table, [.. names.Select(n => n.AsPhase)]);
        int[] columns = [.. Enumerable.Range(0, names.Length).Where(i => i != frequency)];
        _levels = [.. columns.Where(
            i => names[i].Kind is ColumnKind.Level or ColumnKind.Unknown && (!names[i].IsCorrection || names[i].IsGain))];
        _levelOf = Only(_levels, i => _names[i].Trace);
        _phases = [.. columns.Select(OfColumn).OfType<PhaseColumn>()];
        _pairs = [.. ComplexPairs.Find(names, []).Select(OfPair).OfType<PhaseColumn>()];
        (_phaseOf, _pairOf) = (Only(_phases, p => _names[p.Index].Trace), Only(_pairs, p => _names[p.Index].Trace));
    }

    /// <summary>The phase of a pair whose magnitude is the level; null where every imaginary part is 0.</summary>
    public PhaseColumn? OfPair(LevelColumn pair) =>
        _table.IsZero(pair.Imaginary!.Value) ? null : new PhaseColumn(pair.Index, pair.Imaginary, 1);

    /// <summary>The phase beside a column of levels; null where none certainly belongs to it.</summary>
    /// <param name="level">Place of the level from 0.</param>
    public PhaseColumn? Beside(int level) =>
        Named(level, _phaseOf) ?? Alone(level, _phases) ?? Named(level, _pairOf) ?? Alone(level, _pairs);

    private PhaseColumn? OfColumn(int column) =>
        _names[column].DegreesPerUnit is { } degrees && !_table.IsZero(column) ? new PhaseColumn(column, null, degrees) : null;

    private PhaseColumn? Named(int level, Dictionary<string, PhaseColumn> phases)
    {
        string trace = _names[level].Trace;
        bool alone = trace.Length > 0 && _levelOf.TryGetValue(trace, out int only) && only == level;
        return alone ? phases.GetValueOrDefault(trace) : null;
    }

    private PhaseColumn? Alone(int level, ImmutableArray<PhaseColumn> phases) =>
        _levels is [var only] && only == level && phases is [var phase] && MayBeOf(_names[phase.Index], _names[level])
            ? phase : null;

    // "Phase drift" is another thing, and the phase of S11 is none of S21.
    private static bool MayBeOf(PhaseName phase, PhaseName level) =>
        phase.Trace.Length == 0 || (level.Trace.Length == 0 && phase.IsParameter);

    // What several share tells none of them.
    private static Dictionary<string, T> Only<T>(IEnumerable<T> items, Func<T, string> trace)
        where T : notnull => items.GroupBy(trace).Where(g => g.Count() == 1).ToDictionary(g => g.Key, g => g.First());
}
