using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>Reads the sections of a file, a table under a heading each.</summary>
internal sealed class TraceSections(TraceText text, NumericRows rows, Separator separator, PriorKnowledge known)
{
    private readonly FaultList _faults = known.Faults;
    private readonly DelimitedTable _table = new(text, rows, separator, known.Faults);

    /// <summary>The traces of a section; none, with the reason among the faults, where it cannot be read.</summary>
    /// <param name="heading">Line of its heading from 0.</param>
    /// <param name="end">The line behind it.</param>
    public ImmutableArray<Trace> Read(int heading, int end)
    {
        if (Data(heading, end) is not { } block)
        {
            return [];
        }

        Preamble own = Preamble.Read(text, heading + 1, block.FirstLine);
        var sight = new TableSight(text, rows, block.Run);
        if (AxisColumn.Find(sight, own, _faults) is not { } axisColumn)
        {
            return [];
        }

        List<string> title = FieldReader.Texts(text.Line(heading + 1), separator);
        string name = title is [{ Length: > 0 } first, ..] ? first : "trace";
        return new ColumnChoice(sight, known.Options, own, _faults).Choose(Names(title, name, sight.Columns, axisColumn))
            is { } chosen && _table.Axis(block.Run, chosen, known.Options.Grids) is { } axis
            ? [.. Traces(block, new Columns(chosen, axis), own).Select(t => sight.Columns > 2 ? t : t with { Column = name })]
            : [];
    }

    private DataBlock? Data(int from, int to)
    {
        NumericRun[] runs = [.. rows.Runs.Where(r => rows.Line(r, 0) > from && rows.Line(r, 0) < to)];
        if (runs.Length == 1 && runs[0].Rows > 1)
        {
            return DataBlock.Around(text, rows, runs[0], separator, _faults);
        }

        _faults.Add(from + 1,
            runs.Length == 0 ? "the section of the trace holds no row of numbers"
                : runs.Length == 1 ? "the section of the trace holds one row of numbers only"
                : "the section of the trace holds more than one table of numbers",
            runs.Length < 2 ? "export the trace again, with a frequency and a level in each row"
                : "put each table under a heading [Trace] of its own, or export the trace again");
        return null;
    }

    private static ImmutableArray<ColumnName> Names(List<string> title, string name, int columns, int axisColumn)
    {
        string? unit = title.Skip(1).FirstOrDefault(f => LevelUnits.Parse(f) is not null);
        string level = columns > 2 ? "" : unit is null ? name : $"{name} ({unit})";
        return [.. Enumerable.Range(0, columns).Select(c => ColumnName.Of(c == axisColumn ? "frequency" : level))];
    }

    private IEnumerable<Trace> Traces(DataBlock block, Columns columns, Preamble own)
    {
        (ChosenColumns chosen, FrequencyAxis axis) = columns;
        var order = new AxisOrder(_faults, known.Options.Grids);
        if (chosen.Regular is null)
        {
            new DeclaredRange(own, chosen.FrequencyUnit, _faults)
                .Check(order.Turned(axis), block.LastLine + 1, block.LastLine == text.LineCount - 1);
        }

        return order.Of(_table.Traces(block.Run, chosen, axis, known.Preamble), axis, row => rows.Line(block.Run, row) + 1)
            .Select(t => t with { Settings = SharedSettings.Over(t.Settings, own.Settings) });
    }

    /// <summary>The columns of a table, and its frequencies.</summary>
    private readonly record struct Columns(ChosenColumns Chosen, FrequencyAxis Axis);
}
