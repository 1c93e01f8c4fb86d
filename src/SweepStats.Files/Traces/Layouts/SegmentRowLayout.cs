using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Rows of start, stop and step and then levels: each row is a segment of a sweep, and the segments up to the next that starts
/// lower make one sweep. A header names the columns; without one they are date, time, start, stop and step in Hz, and a count.
/// Frequencies are start + k·step; a value at the start of the next segment is that segment's first and is read once.
/// </summary>
internal sealed partial class SegmentRowLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => StartsPlainly(text) || SegmentRowHeader.Find(text) is not null;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        SegmentRowHeader header = (StartsPlainly(text) ? null : SegmentRowHeader.Find(text)) ?? SegmentRowHeader.Usual;
        Preamble preamble = Preamble.Read(text, header.Line + 1);
        if ((header.FrequencyUnit ?? preamble.FrequencyUnit ?? options.FrequencyUnit) is not { } unit)
        {
            faults.Add(UnstatedUnitFault.Frequency(text.File, header.Line + 1,
                inFile: "write it behind the names of start and stop, as in 'start Hz'"));
            return new TraceReading { Faults = faults.All };
        }

        var sweeps = new SegmentSweeps(text.File, header.LevelUnit ?? preamble.LevelUnit, unit, options, faults);
        for (int i = header.Line + 1; i < text.LineCount && !faults.Any; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (IsRow(line) && new SegmentRow(header, unit).Read(line, i + 1, faults) is { } segment)
            {
                sweeps.Add(segment);
            }
        }

        CutNumber.RefuseRow(text, header.Separator, header.FirstLevel, faults);
        ImmutableArray<Trace> traces = faults.Any ? [] : sweeps.Traces(preamble);
        return TraceReading.Of(traces, preamble.Settings, faults) with { IsStacked = !faults.Any };
    }

    private static bool IsRow(ReadOnlySpan<byte> line) => !line.IsEmpty && line[0] is not ((byte)'#' or (byte)'!' or (byte)'%');

    private static bool StartsPlainly(TraceText text)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (IsRow(line))
            {
                return Start().IsMatch(Encoding.UTF8.GetString(line[..Math.Min(line.Length, 200)]));
            }
        }

        return false;
    }

    [GeneratedRegex(@"^\s*\d{4}-\d\d-\d\d\s*,\s*\d\d:\d\d(?::\d\d(?:\.\d+)?)?\s*,\s*[\d.]+(?:[eE][+-]?\d+)?\s*,\s*[\d.]+(?:[eE]"
        + @"[+-]?\d+)?\s*,", RegexOptions.CultureInvariant)]
    private static partial Regex Start();
}
