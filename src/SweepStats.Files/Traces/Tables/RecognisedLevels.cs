using SweepStats.Files.Traces.Preambles;
using SweepStats.Quantities;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the columns of levels by their names, where nobody says which are read.</summary>
internal sealed class RecognisedLevels
{
    private readonly NamedTable _table;
    private readonly PriorKnowledge _known;
    private readonly LevelColumns _columns;
    private readonly int[] _rest;
    private readonly int[] _levels;
    private readonly int[] _strange;
    private readonly ImmutableArray<LevelColumn> _pairs;

    /// <summary>Parts the columns beside the frequencies into levels, complex pairs and levels of a strange kind.</summary>
    public RecognisedLevels(NamedTable table, PriorKnowledge known)
    {
        (_table, _known, _columns) = (table, known, new LevelColumns(table, known));
        _rest = [.. Enumerable.Range(0, table.Names.Length)
            .Where(i => i != table.Frequency && table.Names[i].Kind != ColumnKind.Frequency)];
        int[] levels = WithoutOtherFormats(WithoutDifferences([.. _rest.Where(i => table.Names[i].Kind == ColumnKind.Level)]));
        _pairs = ComplexPairs.Find(table.Names, levels);
        _strange = Strange(levels);
        _levels = [.. levels.Except(_strange)];
    }

    /// <summary>The columns; null, with the reason among the faults, where none holds a level.</summary>
    /// <param name="named">Whether the file names its columns.</param>
    public ImmutableArray<LevelColumn>? Find(bool named)
    {
        int[] unknown = [.. _rest.Where(i => _strange.Contains(i) || (IsUnknown(i) && (named || !IsFiller(i))))];
        int[] filling = [.. _rest.Except(unknown).Where(IsUnknown)];
        if (filling.Length > 0)
        {
            _known.Faults.Assume(
                $"columns that hold nothing but 0 or the number of the row were not read: {_table.List(filling)}");
        }

        bool none = _levels.Length == 0 && _pairs.IsEmpty;
        if (none && unknown.Length == 1 && (_rest.Length == 1 || !named))
        {
            return [_columns.WithPhase(_columns.Of(unknown[0], asked: false))];
        }

        if (none && unknown.Length == 0)
        {
            _known.Faults.Add(NoLevel());
            return null;
        }

        TellUnread([.. _levels, .. unknown], filling);
        return [.. Doubted(unknown), .. _pairs.Select(p => _columns.Pair(Called(p)))];
    }

    private bool IsUnknown(int column) => _table.Names[column].Kind == ColumnKind.Unknown;

    private bool IsFiller(int column) => _table.Sight.IsZero(column) || _table.Sight.Counts(column);

    private static LevelColumn Called(LevelColumn pair) =>
        pair with { Name = pair.Name.Length > 0 ? pair.Name : ColumnList.Number(pair.Index) };

    private void TellUnread(int[] read, int[] filling)
    {
        int[] pairs = [.. _pairs.SelectMany(p => new[] { p.Index, p.Imaginary!.Value })];
        HashSet<int> used = [.. read, .. filling, .. pairs, .. _columns.PhasesBeside(read)];
        if (used.Count < _rest.Length)
        {
            _known.Faults.Assume($"columns that are not levels were not read: {_table.List(_rest.Except(used))}");
        }
    }

    private IEnumerable<LevelColumn> Doubted(int[] unknown)
    {
        ReadFault? mixed = Mixed();
        LevelColumn[] columns =
            [.. _levels.Concat(unknown).Order().Select(i => _columns.WithPhase(_columns.Of(i, asked: false)))];
        bool withoutUnit = columns.Any(c => unknown.Contains(c.Index) && c.Unit is null);
        ReadFault doubt = Untold(unknown, withoutUnit);
        return columns.Select(c => c with { Doubt = unknown.Contains(c.Index) ? doubt : c.Doubt ?? mixed });
    }

    private ReadFault? Mixed() => _levels.Select(i => _table.Names[i].Statistic).Distinct().Count() < 2 ? null
        : new(_table.Sight.File, null, "some columns show the same sweeps with other detectors, or their highest, lowest or "
            + $"mean, which are no repeats of each other: {_table.List(_levels)}", _known.Options.NameColumn)
        { Asks = StatableKeys.LevelColumns, Candidates = _table.List(_levels) };

    // Once the column is named its unit would be asked for: both are said now.
    private ReadFault Untold(int[] unknown, bool withoutUnit)
    {
        string name = _known.Options.NameColumn;
        return new(_table.Sight.File, null, $"the names do not tell whether these columns are levels: {_table.List(unknown)}",
            withoutUnit ? $"{name}; {UnstatedUnitFault.LevelToo}" : name)
        {
            Asks = withoutUnit ? StatableKeys.LevelColumns | StatableKeys.LevelUnit : StatableKeys.LevelColumns,
            Candidates = _table.List(unknown),
        };
    }

    // Where none may be named, to name one would be no way out.
    private ReadFault NoLevel()
    {
        bool nameable = !_rest.All(i => NotALevel.Because(_table.Names, i) is not null);
        string held = _rest.Length == 0 ? "frequencies" : _table.List(_rest);
        string name = nameable ? $"; if one of them is a level, {_known.Options.NameColumn}" : "";
        return new(_table.Sight.File, null, "no column holds a level",
            $"export the level trace: this file holds {held} and no level{name}")
        {
            Asks = nameable ? StatableKeys.LevelColumns : StatableKeys.None,
            Candidates = _table.List(_rest),
        };
    }

    // Beside columns that are called levels one of another name may be anything, whatever its unit: "Level (V)" and "Fan (V)".
    private int[] Strange(int[] levels) => levels.Any(i => _table.Names[i].IsNamedLevel)
        ? [.. levels.Where(i => !Tells(_table.Names[i]) && UnlikeTraces.Of(_table.Names[i].Text) is null)] : [];

    private static bool Tells(ColumnName name) => name.IsNamedLevel || name.IsMagnitude || name.Statistic is not null
        || name.IsCorrection || name.IsBareUnit || name.LevelUnit is null;

    // Beside levels in dBm or dBµV a column in dB is a margin, a correction or an uncertainty. Corrections are told of by
    // themselves.
    private int[] WithoutDifferences(int[] levels)
    {
        LevelUnit? Stated(int i) => _table.Sight.Units?.Level(i) ?? _table.Names[i].LevelUnit;
        return levels.Any(i => Stated(i) is { } unit && unit.Scale() != LevelScale.DecibelRatio && !_table.Names[i].IsCorrection)
            ? [.. levels.Where(i => Stated(i) != LevelUnit.Decibels || _table.Names[i].IsCorrection)]
            : levels;
    }

    // A trace that shows a phase is left out beside those that show levels.
    private int[] WithoutOtherFormats(int[] levels)
    {
        int[] shown = [.. levels.Where(i => _table.Names[i].LevelUnit is not null || _columns.FormatOf(i) is not { } format
            || !FormatWords.IsNoLevel(format))];
        return shown.Length > 0 ? shown : levels;
    }
}
