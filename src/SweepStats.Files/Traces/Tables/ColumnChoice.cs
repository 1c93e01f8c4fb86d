using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Quantities;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Decides which columns are read, from their names, the rest of the file and what the campaign says. What leaves a doubt is
/// refused, or handed on with the doubt.
/// </summary>
internal sealed class ColumnChoice(TableSight table, TraceReadOptions options, Preamble preamble, FaultList faults)
{
    private const string NameFrequency = "name it as frequency_column under [[files]] in campaign.toml";

    private const int LongestLabel = 80;

    private readonly HashSet<string> _twice = [];
    private readonly LevelUnitChoice _units = new(table, options, preamble, faults);
    private StatedColumns _stated = new([], options, faults);
    private int? _frequency;

    private string NameColumn => "name the column to read " + options.NamedWhere;

    public ChosenColumns? Choose(ImmutableArray<ColumnName>? header)
    {
        bool headed = header is { } found
            && (HeaderDoubts.IsHeader(found, table, preamble) || options.NamedColumns.Any(s => found.Any(n => n.IsCalled(s))));
        if (headed && options.FrequencyColumn is null && HeaderDoubts.MayBeRemark(header!.Value, table))
        {
            faults.Add(null, "the line above the rows may name their columns in this order or be a remark about units: nobody "
                + "can tell which column is the frequency",
                "write names above the rows in the order of the columns, such as 'Frequency (MHz)' and 'Level (dBm)'");
            return null;
        }

        ImmutableArray<ColumnName>? stated = headed ? header : StatedNames();
        ImmutableArray<ColumnName> names = DatedColumns.Named(stated ?? NamesBeside());
        _twice.UnionWith(names.GroupBy(n => n.Text).Where(g => g.Count() > 1).Select(g => g.Key));
        _stated = new StatedColumns(names, options, faults);
        if ((options.FrequencyColumn is null ? FrequencyPlace(names, stated is not null)
            : _frequency = _stated.Frequency()) is not { } f)
        {
            return null;
        }

        if (f < 0)
        {
            return RegularAxis.Of(table.Rows, new(preamble, options, faults)) is { } regular
                && Wanted(names, f, stated is not null) is { } levels
                ? new ChosenColumns(f, FrequencyUnit.Hertz, levels) { Regular = regular }
                : null;
        }

        return FrequencyUnitChoice.Of(table, f, names[f], new(preamble, options, faults)) is { } unit
                && Wanted(names, f, stated is not null) is { } wanted
            ? new ChosenColumns(f, unit, wanted)
            : null;
    }

    // The place of the frequency column; −1 where none holds it and its range is stated.
    private int? FrequencyPlace(ImmutableArray<ColumnName> names, bool named)
    {
        _frequency = RegularColumns.Apply(names, named, table, preamble) ? -1 : FrequencyColumn(names, named);
        if (_frequency is >= 0 and var at && HeaderDoubts.IndexBeside(names, at, table) is { } other)
        {
            faults.Add(null, $"column {ColumnList.Of(names, [at])} counts the rows, and column {ColumnList.Of(names, [other])} "
                + "rises beside it: nobody can tell which is the frequency",
                "name the column of frequencies 'Frequency', with its unit in brackets, and the other 'Index'");
            return null;
        }

        return _frequency;
    }

    // Lines such as "Column 2: Level (dBm)" name the columns as a header does.
    private ImmutableArray<ColumnName>? StatedNames() =>
        preamble.ColumnNames.Count == table.Columns && preamble.ColumnNames.Keys.Max() == table.Columns
            ? [.. preamble.ColumnNames.Values.Select(n => ColumnName.Of(n))] : null;

    // A line above may name the traces without heading their columns.
    private ImmutableArray<ColumnName> NamesBeside()
    {
        bool fits = preamble.TraceNames.Length == table.Columns - 1;
        return [.. Enumerable.Range(0, table.Columns)
            .Select(i => fits && i > 0 ? ColumnName.OfTrace(preamble.TraceNames[i - 1]) : ColumnName.Of(""))];
    }

    private int? FrequencyColumn(ImmutableArray<ColumnName> names, bool named)
    {
        int[] found = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Kind == ColumnKind.Frequency)];
        if (found.Length == 1)
        {
            return found[0];
        }

        if (found.Length > 1
            && found.All(c => names[c].FrequencyUnit == names[found[0]].FrequencyUnit && table.AreEqual(c, found[0])))
        {
            faults.Assume("the frequency stands beside each trace; the first column of it was read");
            return found[0];
        }

        if (found.Length > 1)
        {
            AskFrequency($"more than one column looks like a frequency: {ColumnList.Of(names, found)}",
                $"{NameFrequency}, or keep one frequency column a file", ColumnList.Of(names, found));
            return null;
        }

        if (named && (AxisColumn.Declared(table, preamble) ?? HeaderDoubts.Abscissa(names, preamble)) is { } abscissa)
        {
            faults.Assume($"column {ColumnList.Of(names, [abscissa])} was taken as the frequency, as the lines above tell");
            return abscissa;
        }

        if (named)
        {
            string all = ColumnList.Of(names, Enumerable.Range(0, names.Length));
            AskFrequency($"no column is named as the frequency among {all}",
                $"if one of them is, {NameFrequency}, with its frequency_unit; or name it 'Frequency' in the file, with the "
                    + "unit of the export in brackets: Hz, kHz, MHz or GHz", all,
                StatableKeys.FrequencyColumn | StatableKeys.FrequencyUnit);
            return null;
        }

        return AxisColumn.Find(table, preamble, faults);
    }

    private void AskFrequency(string problem, string remedy, string candidates,
        StatableKeys asks = StatableKeys.FrequencyColumn) =>
        faults.Add(new ReadFault(table.File, null, problem, remedy) { Asks = asks, Candidates = candidates });

    private ImmutableArray<LevelColumn>? Wanted(ImmutableArray<ColumnName> names, int frequency, bool named)
    {
        if (options.RealColumn is not null)
        {
            return _stated.Pair(frequency, table) is { } stated ? [stated] : null;
        }

        if (!options.Columns.IsEmpty)
        {
            return Named(names, frequency);
        }

        int[] rest = [.. Enumerable.Range(0, names.Length).Where(i => i != frequency && names[i].Kind != ColumnKind.Frequency)];
        int[] levels =
            WithoutOtherFormats(names, WithoutDifferences(names, [.. rest.Where(i => names[i].Kind == ColumnKind.Level)]));
        var phases = new PhaseSearch(table, names, frequency);
        ImmutableArray<LevelColumn> pairs = ComplexPairs.Find(names, levels);
        int[] strange = Strange(names, levels);
        levels = [.. levels.Except(strange)];
        int[] unknown =
            [.. rest.Where(i => strange.Contains(i)
                || (names[i].Kind == ColumnKind.Unknown && (named || !(table.IsZero(i) || table.Counts(i)))))];
        int[] zero = [.. rest.Except(unknown).Where(i => names[i].Kind == ColumnKind.Unknown)];
        if (zero.Length > 0)
        {
            faults.Assume(
                $"columns that hold nothing but 0 or the number of the row were not read: {ColumnList.Of(names, zero)}");
        }

        if (levels.Length == 0 && unknown.Length == 1 && pairs.IsEmpty && (rest.Length == 1 || !named))
        {
            return [WithPhase(names, LevelOf(names, unknown[0], false), phases)];
        }

        if (levels.Length == 0 && unknown.Length == 0 && pairs.IsEmpty)
        {
            faults.Add(new ReadFault(table.File, null, "no column holds a level",
                NoLevel(names, rest))
            { Asks = Nameable(names, rest), Candidates = ColumnList.Of(names, rest) });
            return null;
        }

        HashSet<int> read =
        [
            .. levels, .. unknown, .. zero, .. pairs.SelectMany(p => new[] { p.Index, p.Imaginary!.Value }),
            .. levels.Concat(unknown).SelectMany(i => phases.Beside(i)?.Places ?? []),
        ];
        if (read.Count < rest.Length)
        {
            faults.Assume($"columns that are not levels were not read: {ColumnList.Of(names, rest.Except(read))}");
        }

        ReadFault? mixed = levels.Select(i => names[i].Statistic).Distinct().Count() < 2 ? null
            : new(table.File, null, "some columns show the same sweeps with other detectors, or their highest, lowest or mean, "
                + $"which are no repeats of each other: {ColumnList.Of(names, levels)}", NameColumn)
            { Asks = StatableKeys.LevelColumns, Candidates = ColumnList.Of(names, levels) };
        HashSet<int> doubtful = [.. unknown];
        ReadFault doubt = new(table.File, null,
            $"the names do not tell whether these columns are levels: {ColumnList.Of(names, unknown)}", NameColumn)
        { Asks = StatableKeys.LevelColumns, Candidates = ColumnList.Of(names, unknown) };
        LevelColumn[] columns =
            [.. levels.Concat(unknown).Order().Select(i => WithPhase(names, LevelOf(names, i, false), phases))];
        // Once the column is named its unit would be asked for: both are said now.
        doubt = columns.Any(c => doubtful.Contains(c.Index) && c.Unit is null) ? doubt with
        {
            Remedy = $"{NameColumn}; {UnstatedUnitFault.LevelToo}",
            Asks = StatableKeys.LevelColumns | StatableKeys.LevelUnit,
        }
        : doubt;
        return
        [
            .. columns
                .Select(c => doubtful.Contains(c.Index) ? c with { Doubt = doubt } : c with { Doubt = c.Doubt ?? mixed }),
            .. pairs.Select(p => p with
            {
                Name = p.Name.Length > 0 ? p.Name : ColumnList.Number(p.Index),
                Phase = phases.OfPair(p),
            }),
        ];
    }

    // Beside columns that are called levels one of another name may be anything, whatever its unit: "Level (V)" and "Fan (V)".
    private static int[] Strange(ImmutableArray<ColumnName> names, int[] levels)
    {
        bool Tells(int i) => names[i].IsNamedLevel || names[i].IsMagnitude || names[i].Statistic is not null
            || names[i].IsCorrection || names[i].IsBareUnit || names[i].LevelUnit is null;
        return levels.Any(i => names[i].IsNamedLevel)
            ? [.. levels.Where(i => !Tells(i) && UnlikeTraces.Of(names[i].Text) is null)] : [];
    }

    // Where none may be named, to name one would be no way out.
    private string NoLevel(ImmutableArray<ColumnName> names, int[] rest)
    {
        string held = rest.Length == 0 ? "frequencies" : ColumnList.Of(names, rest);
        string name = Nameable(names, rest) == StatableKeys.None ? "" : $"; if one of them is a level, {NameColumn}";
        return $"export the level trace: this file holds {held} and no level{name}";
    }

    private static StatableKeys Nameable(ImmutableArray<ColumnName> names, int[] rest) =>
        rest.All(i => NotALevel.Because(names, i) is not null) ? StatableKeys.None : StatableKeys.LevelColumns;

    private LevelColumn WithPhase(ImmutableArray<ColumnName> names, LevelColumn level, PhaseSearch phases)
    {
        if (phases.Beside(level.Index) is not { } phase)
        {
            return level;
        }

        faults.Assume($"column {level.Name} has its phase beside it: {ColumnList.Of(names, phase.Places)}");
        return level with { Phase = phase };
    }

    // Beside levels in dBm or dBµV a column in dB is a margin, a correction or an uncertainty. Corrections are told of by
    // themselves.
    private int[] WithoutDifferences(ImmutableArray<ColumnName> names, int[] levels)
    {
        LevelUnit? Stated(int i) => table.Units?.Level(i) ?? names[i].LevelUnit;
        return levels.Any(i => Stated(i) is { } unit && unit.Scale() != LevelScale.DecibelRatio && !names[i].IsCorrection)
            ? [.. levels.Where(i => Stated(i) != LevelUnit.Decibels || names[i].IsCorrection)]
            : levels;
    }

    private ImmutableArray<LevelColumn>? Named(ImmutableArray<ColumnName> names, int frequency)
    {
        var columns = ImmutableArray.CreateBuilder<LevelColumn>();
        var phases = new PhaseSearch(table, names, frequency);
        foreach (string wanted in options.Columns)
        {
            int[] matches = [.. Enumerable.Range(0, names.Length).Where(i => Answers(names[i], wanted))];
            if (matches.Length == 0 && int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                && number >= 1 && number <= names.Length)
            {
                matches = [number - 1];
            }

            if (NumberAndName(names, frequency, matches, wanted) is { } both)
            {
                faults.Add(null, both, "give the columns other names in the header");
                return null;
            }

            LevelColumn? pair = matches.Length is 0 or 2
                ? ComplexPairs.Find(names, [])
                    .FirstOrDefault(p => string.Equals(p.Name, wanted, StringComparison.OrdinalIgnoreCase)) : null;
            if (pair is not null)
            {
                columns.Add(pair with { Asked = true, Phase = phases.OfPair(pair) });
                continue;
            }

            if (matches.Length != 1 || matches[0] == frequency)
            {
                string problem = matches.Length == 0 ? "there is no column" : matches.Length > 1 ? "more than one column is named"
                    : "the frequency column is not a level:";
                faults.Add(
                    null, $"{problem} '{wanted}' in {table.File}; it has "
                        + $"{ColumnList.Of(names, Enumerable.Range(0, names.Length))}",
                    $"correct {options.ColumnsStatedIn}: a header as listed here, or a number from 1");
                return null;
            }

            if (NotALevel.Because(names, matches[0]) is { } what)
            {
                faults.Add(null, $"column {ColumnList.Of(names, matches)} is {what}, not a level",
                    "name a column of levels, or export the level trace");
                return null;
            }

            LevelColumn level = LevelOf(names, matches[0], true);
            LevelColumn? complete = options.PhaseColumn is null ? WithPhase(names, level, phases)
                : _stated.WithPhase(level, frequency);
            if (complete is null)
            {
                return null;
            }

            columns.Add(complete);
        }

        return columns.ToImmutable();
    }

    // Headers "1,2,3" behind the frequency: "2" is the number of one column and the name of the next.
    private static string? NumberAndName(ImmutableArray<ColumnName> names, int frequency, int[] matches, string wanted)
    {
        bool isNumber = int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1
            && number <= names.Length;
        return matches.Length != 1 || !isNumber || number - 1 == matches[0] || number - 1 == frequency ? null
            : $"'{wanted}' is the name of column {ColumnList.Number(matches[0])} and the number of column "
                + $"{ColumnList.Of(names, [number - 1])}";
    }

    // By its header, or by the S-parameter that the header states.
    private static bool Answers(ColumnName name, string wanted) =>
        name.Text.Length > 0 && (string.Equals(name.Text, wanted, StringComparison.OrdinalIgnoreCase)
            || (name.Kind == ColumnKind.Level && string.Equals(name.Parameter, wanted, StringComparison.OrdinalIgnoreCase)));

    private LevelColumn LevelOf(ImmutableArray<ColumnName> names, int index, bool asked)
    {
        ColumnName name = names[index];
        string label = name.Text.Length == 0 ? ColumnList.Number(index) : name.Text.Length <= LongestLabel ? name.Text
            : name.Text[..LongestLabel] + "…";
        bool twice = name.Text.Length > 0 && _twice.Contains(name.Text);
        string? format = FormatOf(index);
        LevelUnit? unit = _units.Of(names, index, label, format);
        var column = new LevelColumn(index, label, unit)
        {
            Quantity = IsCorrection(names, index, asked) ? "correction" : name.Parameter ?? "level",
            Asked = asked,
        };
        return column with
        {
            Name = twice ? $"{label} #{ColumnList.Number(index)}" : label,
            Doubt = FormatDoubt(names, format, label) ?? Doubt(names, column) ?? UnitDoubt(names, name, label),
        };
    }

    // A gain that a person asks for, that is called by its S-parameter or that has a phase is the transmission.
    private static bool IsCorrection(ImmutableArray<ColumnName> names, int index, bool asked) =>
        names[index] is { IsCorrection: true } name
        && !(name.IsGain && !name.IsAttenuation
            && (asked || name.Parameter is not null || names.Any(n => n.Part == ComplexPart.Phase)));

    private ReadFault? Doubt(ImmutableArray<ColumnName> names, LevelColumn column)
    {
        (ColumnName name, string label) = (names[column.Index], column.Name);
        if (IsCorrection(names, column.Index, column.Asked))
        {
            return CorrectionDoubt.Of(table.File, name, label);
        }

        // Beside a loss "Drift (dB)" may be anything that has to do with it.
        if (column.Unit == LevelUnit.Decibels && !column.Asked && !name.IsNamedLevel && !name.IsCorrection
            && name.Text.Length > 0 && names.Any(n => n.IsCorrection))
        {
            return new ReadFault(table.File, null, $"column {label} stands beside an attenuation or a correction, and its name "
                + "does not tell whether it is a level", NameColumn)
            {
                Asks = StatableKeys.LevelColumns,
            };
        }

        return column.Unit is not null ? null
            : name.StrangeUnit is { } strange ? new ReadFault(
                table.File, null, $"column {label} is in '{strange}', which is not a unit of level that can be read",
                $"export levels in {LevelUnits.Words}, and say so in the header")
            : UnstatedUnitFault.Level(table.File, $"{UnstatedUnitFault.LevelProblem} of column {label}");
    }

    private string? FormatOf(int index) =>
        preamble.FormatOf(index - (_frequency is >= 0 and var f && index > f ? 1 : 0), table.Columns - (_frequency < 0 ? 0 : 1));

    // A trace that shows a phase is left out beside those that show levels.
    private int[] WithoutOtherFormats(ImmutableArray<ColumnName> names, int[] levels)
    {
        int[] shown =
            [.. levels.Where(
                i => names[i].LevelUnit is not null || FormatOf(i) is not { } format || !FormatWords.IsNoLevel(format))];
        return shown.Length > 0 ? shown : levels;
    }

    // Beside a column of phases the format may be that of the other.
    private ReadFault? FormatDoubt(ImmutableArray<ColumnName> names, string? format, string label) =>
        format is null || !FormatWords.IsNoLevel(format) || names.Any(n => n.Part == ComplexPart.Phase) ? null
        : new ReadFault(table.File, preamble.LineOf(Setting.Format),
            $"the file states the format '{format}' for column {label}, which is no level",
            "export the trace as a level or as log magnitude");

    // Of several columns each may have its unit, and the file that of one of them; dB alone may be that of the scale.
    private ReadFault? UnitDoubt(ImmutableArray<ColumnName> names, ColumnName name, string label) =>
        preamble.LevelUnit is not ({ } stated and not LevelUnit.Decibels) || name.LevelUnit is not { } named || named == stated
            || names.Any(n => n.LevelUnit == stated) ? null
        : new ReadFault(
            table.File, preamble.LineOf(Setting.LevelUnit),
            $"the file states levels in {stated.Symbol()} and column {label} is in {named.Symbol()}",
            "correct the one that is wrong, or export the sweep again");
}
