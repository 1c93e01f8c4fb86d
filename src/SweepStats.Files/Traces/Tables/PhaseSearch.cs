using System.Collections.Immutable;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds the phase that belongs to a level: the one whose name tells the same trace, else the only phase beside the only level. A phase whose unit the header does
/// not state is left: degrees and radians cannot be told apart by their size. So is one that is 0 in every row, as scalar instruments fill it in.
/// </summary>
internal sealed class PhaseSearch
{
    private readonly TableSight _table;
    private readonly ImmutableArray<PhaseName> _traces;
    private readonly ImmutableArray<int> _levels;
    private readonly ImmutableArray<PhaseColumn> _phases;
    private readonly ImmutableArray<PhaseColumn> _pairs;

    /// <param name="table">The table.</param>
    /// <param name="names">Its columns.</param>
    /// <param name="frequency">Place of the frequency column from 0.</param>
    public PhaseSearch(TableSight table, ImmutableArray<ColumnName> names, int frequency)
    {
        _table = table;
        _traces = [.. names.Select(n => new PhaseName(n))];
        _levels = [.. Enumerable.Range(0, names.Length).Where(i => i != frequency && names[i].Kind is ColumnKind.Level or ColumnKind.Unknown && !names[i].IsCorrection)];
        _phases =
        [
            .. Enumerable.Range(0, names.Length).Where(i => _traces[i].DegreesPerUnit is not null && !table.IsZero(i))
                .Select(i => new PhaseColumn(i, null, _traces[i].DegreesPerUnit!.Value)),
        ];
        _pairs = [.. ComplexPairs.Find(names, []).Select(OfPair).OfType<PhaseColumn>()];
    }

    /// <summary>The phase of a pair whose magnitude is the level; null where every imaginary part is 0.</summary>
    public PhaseColumn? OfPair(LevelColumn pair) => _table.IsZero(pair.Imaginary!.Value) ? null : new PhaseColumn(pair.Index, pair.Imaginary, 1);

    /// <summary>The phase beside a column of levels; null where none certainly belongs to it.</summary>
    /// <param name="level">Place of the level from 0.</param>
    public PhaseColumn? Beside(int level) => Among(_phases, level) ?? Among(_pairs, level);

    private PhaseColumn? Among(ImmutableArray<PhaseColumn> phases, int level)
    {
        string trace = _traces[level].Trace;
        PhaseColumn[] same = [.. phases.Where(p => p.Index != level && trace.Length > 0 && _traces[p.Index].Trace == trace)];
        if (same.Length > 0)
        {
            return same.Length == 1 && _levels.Count(l => _traces[l].Trace == trace) == 1 ? same[0] : null;
        }

        return phases.Length == 1 && phases[0].Index != level && _levels is [var only] && only == level && MayBeOf(phases[0], trace) ? phases[0] : null;
    }

    // "Phase drift" is another thing, and the phase of S11 is none of S21.
    private bool MayBeOf(PhaseColumn phase, string trace) =>
        _traces[phase.Index] is var name && (name.Trace.Length == 0 || (trace.Length == 0 && name.IsParameter));
}
