using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Decides which columns are read, from their names, the rest of the file and what the campaign says. What leaves a doubt is
/// refused, or handed on with the doubt.
/// </summary>
internal sealed class ColumnChoice(TableSight table, TraceReadOptions options, Preamble preamble, FaultList faults)
{
    private readonly PriorKnowledge _known = new(preamble, options, faults);

    /// <summary>The columns to read; null, with the reason among the faults, where they cannot be told.</summary>
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
        int? frequency = options.FrequencyColumn is null ? FrequencyPlace(names, stated is not null)
            : new StatedColumns(names, options, faults).Frequency();
        return frequency is { } f ? Chosen(new NamedTable(table, names, f), stated is not null) : null;
    }

    private ChosenColumns? Chosen(NamedTable of, bool named)
    {
        RegularAxis? regular = of.Frequency < 0 ? RegularAxis.Of(table.Rows, _known) : null;
        FrequencyUnit? unit = of.Frequency >= 0
            ? FrequencyUnitChoice.Of(table, of.Frequency, of.Names[of.Frequency], _known)
            : regular is null ? null : FrequencyUnit.Hertz;
        return unit is { } known && Levels(of, named) is { } levels
            ? new ChosenColumns(of.Frequency, known, levels) { Regular = regular } : null;
    }

    private ImmutableArray<LevelColumn>? Levels(NamedTable of, bool named)
    {
        var stated = new StatedColumns(of.Names, options, faults);
        if (options.RealColumn is not null)
        {
            return stated.Pair(of.Frequency, table) is { } pair ? [pair] : null;
        }

        return options.Columns.IsEmpty ? new RecognisedLevels(of, _known).Find(named)
            : new AskedLevels(of, _known, stated).Find();
    }

    // The place of the frequency column; −1 where none holds it and its range is stated.
    private int? FrequencyPlace(ImmutableArray<ColumnName> names, bool named)
    {
        int? place = RegularColumns.Apply(names, named, table, preamble) ? -1
            : new FrequencyColumn(table, preamble, faults).Find(names, named);
        if (place is >= 0 and var at && HeaderDoubts.IndexBeside(names, at, table) is { } other)
        {
            faults.Add(null, $"column {ColumnList.Of(names, [at])} counts the rows, and column {ColumnList.Of(names, [other])} "
                + "rises beside it: nobody can tell which is the frequency",
                "name the column of frequencies 'Frequency', with its unit in brackets, and the other 'Index'");
            return null;
        }

        return place;
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
}
