using System.Globalization;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Reads the traces of a table whose place in the file is known, and of those below it over the same frequencies.
/// </summary>
internal sealed class TableReader(TraceText text, NumericRows rows, Separator separator, PriorKnowledge known)
{
    private readonly FaultList _faults = known.Faults;
    private readonly DelimitedTable _table = new(text, rows, separator, known.Faults);
    private readonly AxisOrder _order = new(known.Faults, known.Options.Grids);

    /// <summary>Whether there are several tables below each other.</summary>
    public bool IsStacked { get; private set; }

    private ColumnHeader Header => new(text, separator, known.Options.NamedColumns, _faults);

    /// <summary>The traces; none where there are faults.</summary>
    public ImmutableArray<Trace> Read(DataBlock block)
    {
        IsStacked = block.Siblings.Count > 0;
        ImmutableArray<ColumnName>? names = Header.Find(block.FirstLine, block.Run.Columns);
        if (!_faults.Any && block.Run.Rows < 2 && !NamesFrequency(names))
        {
            NoTable.Tell(text, block.FirstLine, _faults);
        }

        if (_faults.Any || Choose(block.Run, names, known.Preamble) is not { } chosen || IsDoubtful(block, chosen)
            || _table.Axis(block.Run, chosen, known.Options.Grids) is not { } axis)
        {
            return [];
        }

        IReadOnlyList<NumericRun> repeats = TableBlocks.Repeats(block.Run, axis);
        CheckRange(block, chosen, Swept(repeats, axis));
        _faults.AssumeAll(known.Preamble.Remarks);
        if (repeats.Count > 1)
        {
            return Repeated(repeats, chosen, block.FirstLine + 1);
        }

        ImmutableArray<Trace> main = [.. Ordered(block.Run, chosen, axis)];
        return block.Siblings.Count == 0 ? main : WithSiblings(block, new MainTable(block.Run, chosen, names, main));
    }

    // Two numbers in a row are a sweep of one point only where their columns are named; else they may be anything.
    private static bool NamesFrequency(ImmutableArray<ColumnName>? names) =>
        names is { } named && named.Any(n => n.Kind == ColumnKind.Frequency);

    private ChosenColumns? Choose(NumericRun run, ImmutableArray<ColumnName>? names, Preamble preamble) =>
        new ColumnChoice(new TableSight(text, rows, run), known.Options, preamble, _faults).Choose(names);

    private bool IsDoubtful(DataBlock block, ChosenColumns chosen)
    {
        if (DecimalCommas.DoubtfulLine(text, block, separator, chosen) is { } doubtful)
        {
            _faults.Add(doubtful + 1, "a comma may be decimal or part thousands, and nothing in the file settles it",
                "export with decimal points, or with other decimals than three"
                + (chosen.Levels.Any(l => l.Unit?.IsLinear() == true) ? ""
                    : ", or write the start and the stop of the sweep with their units above the rows, as in 'Start;30 MHz'"));
            return true;
        }

        bool cut = CutNumber.Ends(text, block, separator);
        if (cut)
        {
            CutNumber.Refuse(block.LastLine, _faults);
        }

        return cut;
    }

    // Who states the start above the stop states it as it was swept.
    private FrequencyAxis Swept(IReadOnlyList<NumericRun> repeats, FrequencyAxis axis) =>
        repeats.Count > 1 ? known.Options.Grids.Of(axis.Hertz.AsSpan()[..repeats[0].Rows])
        : known.Preamble is { Start: { } start, Stop: { } stop }
            && (start.Hertz() ?? start.Value()) > (stop.Hertz() ?? stop.Value()) ? axis
        : _order.Turned(axis);

    private void CheckRange(DataBlock block, ChosenColumns chosen, FrequencyAxis swept)
    {
        if (chosen.Regular is null)
        {
            new DeclaredRange(known.Preamble, chosen.FrequencyUnit, _faults)
                .Check(swept, block.LastLine + 1, block.LastLine == text.LineCount - 1);
        }
    }

    private IEnumerable<Trace> Ordered(NumericRun run, ChosenColumns chosen, FrequencyAxis axis) =>
        _order.Of(_table.Traces(run, chosen, axis, known.Preamble), axis, row => rows.Line(run, row) + 1);

    private ImmutableArray<Trace> Repeated(IReadOnlyList<NumericRun> repeats, ChosenColumns chosen, int firstLine)
    {
        if (repeats.Count > DataBlock.MostTraces)
        {
            _faults.Add(firstLine,
                FormattableString.Invariant($"the frequencies start anew more than {DataBlock.MostTraces} times"),
                "put fewer sweeps into a file");
            return [];
        }

        IsStacked = true;
        _faults.Assume(FormattableString.Invariant($"the frequencies start anew {repeats.Count - 1} times in the table; it ")
            + FormattableString.Invariant($"was read as {repeats.Count} sweeps below each other"));
        return [.. repeats.SelectMany((part, k) => OfPart(part, chosen, " #" + (k + 1).ToString(CultureInfo.InvariantCulture)))];
    }

    private IEnumerable<Trace> OfPart(NumericRun part, ChosenColumns chosen, string suffix)
    {
        FrequencyAxis axis = _table.Axis(part, chosen, known.Options.Grids)!;
        return _table.Traces(part, chosen, axis, known.Preamble).Select(t => t with { Column = t.Column + suffix });
    }

    private ImmutableArray<Trace> WithSiblings(DataBlock block, MainTable main)
    {
        var traces = ImmutableArray.CreateBuilder<Trace>();
        int above = -1;
        foreach (NumericRun run in block.Siblings.Append(block.Run).OrderBy(r => r.FirstRow))
        {
            traces.AddRange(OfTable(Stacked(run, above, main), main));
            above = rows.Line(run, run.Rows - 1);
        }

        if (traces.Count == 0 && !_faults.Any)
        {
            _faults.Add(block.FirstLine + 1, "the lines above the tables call none of them a level",
                "keep the table of levels in the file, under a name such as 'Trace 1'");
        }

        return traces.ToImmutable();
    }

    private StackedTable Stacked(NumericRun run, int above, MainTable main)
    {
        int first = rows.Line(run, 0);
        string label = TableBlocks.Label(text, first, above) is { } word ? word + ": "
            : FormattableString.Invariant($"line {first + 1}: ");
        ImmutableArray<ColumnName>? names = run == main.Run ? main.Names : Header.Find(first, run.Columns);
        return new StackedTable(run, names, Preamble.Read(text, above + 1, first), label);
    }

    // Each table below or above has a header of its own, which may say that it is a phase.
    private IEnumerable<Trace> OfTable(StackedTable table, MainTable main)
    {
        bool isMain = table.Run == main.Run;
        if ((table.OtherContent ?? (!isMain && table.HoldsNoLevel ? "holds no level" : null)) is { } why)
        {
            _faults.Assume(
                FormattableString.Invariant($"the table from line {rows.Line(table.Run, 0) + 1} on {why} and was not read"));
            return [];
        }

        return (isMain ? main.Traces : Sibling(table, main)).Select(table.Labelled);
    }

    // A table without names has the columns of the first.
    private IEnumerable<Trace> Sibling(StackedTable table, MainTable main)
    {
        ChosenColumns? own = table.Names is null ? table.Restated(main.Chosen)
            : Choose(table.Run, table.Names, table.StatesLevels ? table.Own : known.Preamble);
        return own is { } chosen && _table.Axis(table.Run, chosen, known.Options.Grids) is { } axis
            ? Ordered(table.Run, chosen, axis) : [];
    }

    /// <summary>The first table that was read, which those below it follow.</summary>
    private sealed record MainTable(
        NumericRun Run, ChosenColumns Chosen, ImmutableArray<ColumnName>? Names, ImmutableArray<Trace> Traces);
}
