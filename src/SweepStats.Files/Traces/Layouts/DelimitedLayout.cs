using System.Collections.Immutable;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>A table in delimited text, with whatever stands above and below it.</summary>
internal sealed class DelimitedLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => true;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        if (Separator.Find(text) is not { } separator)
        {
            NoTable.Tell(text, null, faults);
            return new TraceReading { Faults = faults.All };
        }

        using var rows = new NumericRows(text, separator);
        if (DataBlock.Find(text, rows, separator, faults) is not { } block)
        {
            return new TraceReading { Faults = faults.All };
        }

        Preamble preamble = Preamble.Read(text, block);
        ImmutableArray<ColumnName>? names = ColumnHeader.Find(text, block, separator, faults);
        if (!faults.Any && block.Run.Rows < 2 && !NamesFrequency(names))
        {
            NoTable.Tell(text, block.FirstLine, faults);
        }

        if (faults.Any || new ColumnChoice(text.File, options, preamble, faults).Choose(names, block.Run.Columns) is not { } chosen)
        {
            return new TraceReading { Faults = faults.All };
        }

        if (DecimalCommas.DoubtfulLine(text, block, separator, chosen) is { } doubtful)
        {
            return TraceReading.Refused(
                text.File, doubtful + 1, "a comma may be decimal or part thousands, and nothing in the file settles it", "export with decimal points, or with other decimals than three");
        }

        var table = new DelimitedTable(text, rows, block.Run, separator, faults);
        if (table.Grid(chosen, options.Grids) is not { } grid)
        {
            return new TraceReading { Faults = faults.All };
        }

        ImmutableArray<Trace> traces = [.. chosen.Levels.Select(l => new Trace(l.Name, "level", l.Unit, grid, table.Levels(l)) { Settings = preamble.Settings })];
        return faults.Any
            ? new TraceReading { Faults = faults.All }
            : new TraceReading { Traces = traces, Settings = preamble.Settings, Assumptions = faults.Assumptions };
    }

    // Two numbers in a row are a sweep of one point only where their columns are named; else they may be anything.
    private static bool NamesFrequency(ImmutableArray<ColumnName>? names) => names is { } named && named.Any(n => n.Kind == ColumnKind.Frequency);
}
