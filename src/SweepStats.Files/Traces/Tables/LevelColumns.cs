using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Forms columns of levels out of their names: unit, phase, and what is doubtful about each.</summary>
internal sealed class LevelColumns
{
    private const int LongestLabel = 80;

    private readonly NamedTable _table;
    private readonly PriorKnowledge _known;
    private readonly HashSet<string> _twice;
    private readonly LevelUnitChoice _units;
    private readonly PhaseSearch _phases;

    /// <summary>Finds names that stand twice, which then need a number, and what the file says of units and phases.</summary>
    public LevelColumns(NamedTable table, PriorKnowledge known)
    {
        (_table, _known) = (table, known);
        _twice = [.. table.Names.GroupBy(n => n.Text).Where(g => g.Count() > 1).Select(g => g.Key)];
        _units = new LevelUnitChoice(table.Sight, known.Options, known.Preamble, known.Faults);
        _phases = new PhaseSearch(table.Sight, table.Names, table.Frequency);
    }

    private bool HasPhases => _table.Names.Any(n => n.Part == ComplexPart.Phase);

    /// <summary>The column at a place.</summary>
    /// <param name="index">The place from 0.</param>
    /// <param name="asked">Whether a person named it.</param>
    public LevelColumn Of(int index, bool asked)
    {
        ColumnName name = _table.Names[index];
        string label = name.Text.Length == 0 ? ColumnList.Number(index) : name.Text.Length <= LongestLabel ? name.Text
            : name.Text[..LongestLabel] + "…";
        bool twice = name.Text.Length > 0 && _twice.Contains(name.Text);
        string? format = FormatOf(index);
        LevelUnit? unit = _units.Of(_table.Names, index, label, format);
        var column = new LevelColumn(index, label, unit)
        {
            Quantity = IsCorrection(name, asked) ? "correction" : name.Parameter ?? "level",
            Asked = asked,
        };
        return column with
        {
            Name = twice ? $"{label} #{ColumnList.Number(index)}" : label,
            Doubt = FormatDoubt(format, label) ?? Doubt(name, column) ?? UnitDoubt(name, label),
        };
    }

    /// <summary>A column with the phase beside it, if any.</summary>
    public LevelColumn WithPhase(LevelColumn level)
    {
        if (_phases.Beside(level.Index) is not { } phase)
        {
            return level;
        }

        _known.Faults.Assume($"column {level.Name} has its phase beside it: {_table.List(phase.Places)}");
        return level with { Phase = phase };
    }

    /// <summary>A pair of real and imaginary part with its phase.</summary>
    public LevelColumn Pair(LevelColumn pair) => pair with { Phase = _phases.OfPair(pair) };

    /// <summary>Where the phases of columns stand.</summary>
    public IEnumerable<int> PhasesBeside(IEnumerable<int> levels) => levels.SelectMany(i => _phases.Beside(i)?.Places ?? []);

    /// <summary>What a column shows, in the words of the file; null where that is not stated.</summary>
    public string? FormatOf(int index)
    {
        int before = _table.Frequency >= 0 && index > _table.Frequency ? 1 : 0;
        return _known.Preamble.FormatOf(index - before, _table.Sight.Columns - (_table.Frequency < 0 ? 0 : 1));
    }

    // A gain that a person asks for, that is called by its S-parameter or that has a phase is the transmission.
    private bool IsCorrection(ColumnName name, bool asked) =>
        name.IsCorrection && !(name.IsGain && !name.IsAttenuation && (asked || name.Parameter is not null || HasPhases));

    private ReadFault? Doubt(ColumnName name, LevelColumn column)
    {
        string label = column.Name;
        if (IsCorrection(name, column.Asked))
        {
            return CorrectionDoubt.Of(_table.Sight.File, name, label);
        }

        if (MayBelongToLoss(name, column))
        {
            return new ReadFault(_table.Sight.File, null, $"column {label} stands beside an attenuation or a correction, and its "
                + "name does not tell whether it is a level", _known.Options.NameColumn)
            {
                Asks = StatableKeys.LevelColumns,
            };
        }

        return column.Unit is not null ? null
            : name.StrangeUnit is { } strange ? new ReadFault(
                _table.Sight.File, null, $"column {label} is in '{strange}', which is not a unit of level that can be read",
                $"export levels in {LevelUnits.Words}, and say so in the header")
            : UnstatedUnitFault.Level(_table.Sight.File, $"{UnstatedUnitFault.LevelProblem} of column {label}");
    }

    // Beside a loss "Drift (dB)" may be anything that has to do with it.
    private bool MayBelongToLoss(ColumnName name, LevelColumn column) =>
        column.Unit == LevelUnit.Decibels && !column.Asked && !name.IsNamedLevel && !name.IsCorrection
            && name.Text.Length > 0 && _table.Names.Any(n => n.IsCorrection);

    // Beside a column of phases the format may be that of the other.
    private ReadFault? FormatDoubt(string? format, string label) =>
        format is null || !FormatWords.IsNoLevel(format) || HasPhases ? null
        : new ReadFault(_table.Sight.File, _known.Preamble.LineOf(Setting.Format),
            $"the file states the format '{format}' for column {label}, which is no level",
            "export the trace as a level or as log magnitude");

    // Of several columns each may have its unit, and the file that of one of them; dB alone may be that of the scale.
    private ReadFault? UnitDoubt(ColumnName name, string label) =>
        _known.Preamble.LevelUnit is not ({ } stated and not LevelUnit.Decibels) || name.LevelUnit is not { } named
            || named == stated || _table.Names.Any(n => n.LevelUnit == stated) ? null
        : new ReadFault(_table.Sight.File, _known.Preamble.LineOf(Setting.LevelUnit),
            $"the file states levels in {stated.Symbol()} and column {label} is in {named.Symbol()}",
            "correct the one that is wrong, or export the sweep again");
}
