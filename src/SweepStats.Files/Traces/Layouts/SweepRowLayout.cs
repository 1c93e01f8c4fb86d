using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// A row for each sweep: frequencies are the titles of the columns, and number, date or name of the sweep stand before the
/// levels.
/// </summary>
internal sealed class SweepRowLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => SweepRowHeader.Find(text) is not null;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        SweepRowHeader header = SweepRowHeader.Find(text)!;
        Preamble preamble = Preamble.Read(text, header.Line);
        faults.AssumeAll(preamble.Remarks);
        var known = new PriorKnowledge(preamble, options, faults);
        if (new SweepRowAxis(header, known).Read() is not { } axis)
        {
            return new TraceReading { Faults = faults.All };
        }

        faults.Assume("the columns are headed by frequencies: each row was read as a sweep");
        var rows = new SweepRows(text, header, axis, known);
        ImmutableArray<Trace> traces = rows.Read();
        CutNumber.RefuseRow(text, header.Separator, header.Lead.Count, faults);
        if (!faults.Any && traces.IsEmpty)
        {
            faults.Add(header.Line + 1, "no row below the frequencies holds levels", "export the sweeps again");
        }

        return TraceReading.Of(traces, preamble.Settings, faults);
    }
}
