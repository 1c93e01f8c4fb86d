using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Reads the traces of a table whose place in the file is known, and of those below it over the same frequencies.
/// </summary>
internal sealed class TableReader(TraceText text, NumericRows rows, Separator separator, FaultList faults)
{
    private readonly DelimitedTable _table = new(text, rows, separator, faults);
    private AxisOrder? _order;

    /// <summary>Whether there are several tables below each other.</summary>
    public bool IsStacked { get; private set; }

    /// <summary>The traces; none where there are faults.</summary>
    public ImmutableArray<Trace> Read(DataBlock block, Preamble preamble, TraceReadOptions options)
    {
        IsStacked = block.Siblings.Count > 0;
        ImmutableArray<ColumnName>? names = Header(options).Find(block.FirstLine, block.Run.Columns);
        if (!faults.Any && block.Run.Rows < 2 && !NamesFrequency(names))
        {
            NoTable.Tell(text, block.FirstLine, faults);
        }

        if (faults.Any || Choose(block.Run, names, preamble, options) is not { } chosen)
        {
            return [];
        }

        if (DecimalCommas.DoubtfulLine(text, block, separator, chosen) is { } doubtful)
        {
            faults.Add(doubtful + 1, "a comma may be decimal or part thousands, and nothing in the file settles it",
                "export with decimal points, or with other decimals than three"
                + (chosen.Levels.Any(l => l.Unit?.IsLinear() == true) ? ""
                    : ", or write the start and the stop of the sweep with their units above the rows, as in 'Start;30 MHz'"));
            return [];
        }

        if (CutNumber.Ends(text, block, separator))
        {
            faults.Add(
                block.LastLine + 1, "the file ends without a line end and its last number has fewer decimals than all others: "
                    + "it may be cut off", "export the sweep again; if the number is whole, end the line");
            return [];
        }

        if (_table.Axis(block.Run, chosen, options.Grids) is not { } axis)
        {
            return [];
        }

        IReadOnlyList<NumericRun> repeats = TableBlocks.Repeats(block.Run, axis);
        FrequencyAxis swept = repeats.Count > 1 ? options.Grids.Of(axis.Hertz.AsSpan()[..repeats[0].Rows])
            : StatesFall(preamble) ? axis : Order(options).Turned(axis);
        if (chosen.Regular is null)
        {
            new DeclaredRange(preamble, chosen.FrequencyUnit, faults)
                .Check(swept, block.LastLine + 1, block.LastLine == text.LineCount - 1);
        }

        faults.AssumeAll(preamble.Remarks);

        if (repeats.Count > DataBlock.MostTraces)
        {
            faults.Add(block.FirstLine + 1,
                FormattableString.Invariant($"the frequencies start anew more than {DataBlock.MostTraces} times"),
                "put fewer sweeps into a file");
            return [];
        }

        if (repeats.Count > 1)
        {
            IsStacked = true;
            faults.Assume(FormattableString.Invariant($"the frequencies start anew {repeats.Count - 1} times in the table; it ")
                + FormattableString.Invariant($"was read as {repeats.Count} sweeps below each other"));
            return [.. repeats.SelectMany(
                (part, k) => OfPart(part, chosen, preamble, options, " #" + (k + 1).ToString(CultureInfo.InvariantCulture)))];
        }

        ImmutableArray<Trace> main = [.. Ordered(block.Run, chosen, axis, preamble, options)];
        return block.Siblings.Count == 0 ? main : WithSiblings(block, new MainTable(chosen, preamble, names, main), options);
    }

    private ColumnHeader Header(TraceReadOptions options) => new(text, separator, options.NamedColumns, faults);

    // Who states the start above the stop states it as it was swept.
    private static bool StatesFall(Preamble preamble) =>
        preamble is { Start: { } start, Stop: { } stop } && (start.Hertz() ?? start.Value()) > (stop.Hertz() ?? stop.Value());

    private AxisOrder Order(TraceReadOptions options) => _order ??= new AxisOrder(faults, options.Grids);

    private IEnumerable<Trace> Ordered(NumericRun run, ChosenColumns chosen, FrequencyAxis axis, Preamble preamble,
        TraceReadOptions options) =>
        Order(options).Of(_table.Traces(run, chosen, axis, preamble), axis, row => rows.Line(run, row) + 1);

    private ChosenColumns? Choose(NumericRun run, ImmutableArray<ColumnName>? names, Preamble preamble,
        TraceReadOptions options) =>
        new ColumnChoice(new TableSight(text, rows, run), options, preamble, faults).Choose(names);

    private IEnumerable<Trace> OfPart(NumericRun part, ChosenColumns chosen, Preamble preamble, TraceReadOptions options,
        string suffix)
    {
        FrequencyAxis axis = _table.Axis(part, chosen, options.Grids)!;
        return _table.Traces(part, chosen, axis, preamble).Select(t => t with { Column = t.Column + suffix });
    }

    // Each table below or above has a header of its own, which may say that it is a phase.
    private ImmutableArray<Trace> WithSiblings(DataBlock block, MainTable main, TraceReadOptions options)
    {
        var traces = ImmutableArray.CreateBuilder<Trace>();
        int above = -1;
        foreach (NumericRun run in block.Siblings.Append(block.Run).OrderBy(r => r.FirstRow))
        {
            int first = rows.Line(run, 0);
            string label = TableBlocks.Label(text, first, above) is { } word ? word + ": "
                : FormattableString.Invariant($"line {first + 1}: ");
            ImmutableArray<ColumnName>? header = run == block.Run ? main.Names : Header(options).Find(first, run.Columns);
            Preamble own = Preamble.Read(text, above + 1, first);
            if (own.FormatOf(0, 1) is { } format && FormatWords.IsNoLevel(format))
            {
                faults.Assume(
                    FormattableString.Invariant($"the table from line {first + 1} on shows '{format}' and was not read"));
            }
            else if (BlockLabel.Other(label,
                header?.Any(n => n.LevelUnit is not null) == true || run.Units is not null) is { } other)
            {
                faults.Assume(
                    FormattableString.Invariant($"the table from line {first + 1} on is called '{other}' and was not read"));
            }
            else if (run == block.Run)
            {
                traces.AddRange(main.Traces.Select(t => Labelled(t, label, own)));
            }
            else
            {
                bool states = own.LevelUnit is not null || own.FormatOf(0, 1) is not null;
                if (header is { } named
                    && !named.Any(n => n.Kind is ColumnKind.Level or ColumnKind.Unknown || n.Part == ComplexPart.Real))
                {
                    faults.Assume(
                        FormattableString.Invariant($"the table from line {first + 1} on holds no level and was not read"));
                }
                else if ((header is null ? Restated(main.Chosen, own)
                    : Choose(run, header, states ? own : main.Preamble, options)) is { } chosen
                    && _table.Axis(run, chosen, options.Grids) is { } axis)
                {
                    traces.AddRange(Ordered(run, chosen, axis, main.Preamble, options).Select(t => Labelled(t, label, own)));
                }
            }

            above = rows.Line(run, run.Rows - 1);
        }

        if (traces.Count == 0 && !faults.Any)
        {
            faults.Add(block.FirstLine + 1, "the lines above the tables call none of them a level",
                "keep the table of levels in the file, under a name such as 'Trace 1'");
        }

        return traces.ToImmutable();
    }

    // A table without names has the columns of the first, and the unit that the lines above it state.
    private static ChosenColumns Restated(ChosenColumns chosen, Preamble own) =>
        (own.LevelUnit ?? (own.FormatOf(0, 1) is { } format ? FormatWords.UnitOf(format) : null)) is not { } unit ? chosen
        : chosen with { Levels = [.. chosen.Levels.Select(l => l with { Unit = unit })] };

    // The lines between two tables may state the detector of the one below.
    private static Trace Labelled(Trace trace, string label, Preamble own) => trace with
    {
        Column = label + trace.Column,
        TakenAt = own.Taken.At ?? trace.TakenAt,
        Settings = NamedDetector.Beside(SharedSettings.Over(trace.Settings, own.Settings), ColumnName.Of(label)),
    };

    // Two numbers in a row are a sweep of one point only where their columns are named; else they may be anything.
    private static bool NamesFrequency(ImmutableArray<ColumnName>? names) =>
        names is { } named && named.Any(n => n.Kind == ColumnKind.Frequency);

    /// <summary>The first table that was read, which those below it follow.</summary>
    private sealed record MainTable(
        ChosenColumns Chosen, Preamble Preamble, ImmutableArray<ColumnName>? Names, ImmutableArray<Trace> Traces);
}
