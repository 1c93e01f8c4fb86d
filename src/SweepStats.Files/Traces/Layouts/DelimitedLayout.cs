using SweepStats.Files.Traces.Mending;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// A table in delimited text, or several over the same frequencies, with whatever stands above, between and below them.
/// </summary>
internal sealed class DelimitedLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => true;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options) =>
        MendedReading.Best(text, Plain(text, options), options.Columns,
            (mended, columns) => Plain(mended, options with { Columns = columns }));

    private static TraceReading Plain(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        if (SeparatorSearch.Find(text) is not { } separator)
        {
            NoTable.Tell(text, null, faults);
            return new TraceReading { Faults = faults.All };
        }

        return Read(text, options, separator, 2);
    }

    /// <summary>Reads the table once it is known how its fields are parted.</summary>
    /// <param name="text">The file.</param>
    /// <param name="options">What is known beside it.</param>
    /// <param name="separator">How the fields are parted.</param>
    /// <param name="fewest">Numbers that a row has at least.</param>
    public static TraceReading Read(TraceText text, TraceReadOptions options, Separator separator, int fewest)
    {
        var faults = new FaultList(text.File);
        using var rows = new NumericRows(text, separator, fewest);
        if (DataBlock.Find(text, rows, separator, faults) is not { } block)
        {
            return new TraceReading { Faults = faults.All };
        }

        Preamble preamble = Preamble.Read(text, block.FirstLine, separator);
        var tables = new TableReader(text, rows, separator, new(preamble, options, faults));
        ImmutableArray<Trace> traces = tables.Read(block);
        return TraceReading.Of(traces, preamble.SettingsOfAll(traces.Length), faults) with { IsStacked = tables.IsStacked };
    }
}
