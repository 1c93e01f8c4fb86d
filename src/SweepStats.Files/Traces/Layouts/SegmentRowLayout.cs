using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Preambles;
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
            if (!line.IsEmpty && line[0] is not ((byte)'#' or (byte)'!' or (byte)'%'))
            {
                Take(line, i + 1, new SegmentTable(header, unit, sweeps), faults);
            }
        }

        ImmutableArray<Trace> traces = faults.Any ? [] : sweeps.Traces(preamble);
        return faults.Any ? new TraceReading { Faults = faults.All }
            : new TraceReading
            {
                Traces = traces,
                IsStacked = true,
                Settings = preamble.Settings,
                Assumptions = faults.Assumptions,
            };
    }

    private static bool StartsPlainly(TraceText text)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (!line.IsEmpty && line[0] is not ((byte)'#' or (byte)'!' or (byte)'%'))
            {
                return Start().IsMatch(Encoding.UTF8.GetString(line[..Math.Min(line.Length, 200)]));
            }
        }

        return false;
    }

    private static void Take(ReadOnlySpan<byte> line, int number, SegmentTable into, FaultList faults)
    {
        (SegmentRowHeader header, FrequencyUnit unit, SegmentSweeps sweeps) = into;
        var reader = new FieldReader(line, header.Separator);
        (double start, double stop, double step) = (double.NaN, double.NaN, double.NaN);
        using var levels = new PooledList<double>(64);
        string when = "";
        for (int i = 0; reader.Next(out ReadOnlySpan<byte> field); i++)
        {
            if (header.When.Contains(i))
            {
                when = (when + " " + Encoding.UTF8.GetString(field[..Math.Min(field.Length, 40)])).Trim();
            }
            else if (i < header.FirstLevel && i != header.Start && i != header.Stop && i != header.Step)
            {
                // A count, or a setting of the segment.
            }
            else if (StrictNumber.TryParse(field, header.Separator.DecimalMark, i < header.FirstLevel ? unit.Exponent() : 0,
                out double value))
            {
                (start, stop, step) =
                    (i == header.Start ? value : start, i == header.Stop ? value : stop, i == header.Step ? value : step);
                if (i >= header.FirstLevel)
                {
                    levels.Add(value);
                }
            }
            else if (!(field.IsEmpty && reader.AtEnd))
            {
                faults.Add(number, $"'{Encoding.UTF8.GetString(field[..Math.Min(field.Length, 40)])}' is not a finite number",
                    "correct the row or export the sweep again");
                return;
            }
            else
            {
                break;
            }
        }

        step = header.Step is null && levels.Count > 1 ? (stop - start) / (levels.Count - 1) : step;
        if (!(start >= 0 && step > 0 && stop > start) || levels.Count == 0
            || Math.Abs(((stop - start) / step) - levels.Count) > 1.5)
        {
            string needed = header.Line < 0 ? "date, time, start, stop, step, a count, and a level for every step"
                : "what its header names, and a level for every step";
            faults.Add(number,
                FormattableString.Invariant($"a segment from {start:R} to {stop:R} Hz in steps of {step:R} Hz does not fit its ")
                    + FormattableString.Invariant($"{levels.Count} levels"), "each row needs " + needed);
            return;
        }

        sweeps.Add(new Segment(SweepDate.Parse(when)?.At, when, new(start, stop, step), levels.Items.ToArray(), number));
    }

    [GeneratedRegex(@"^\s*\d{4}-\d\d-\d\d\s*,\s*\d\d:\d\d(?::\d\d(?:\.\d+)?)?\s*,\s*[\d.]+(?:[eE][+-]?\d+)?\s*,\s*[\d.]+(?:[eE]"
        + @"[+-]?\d+)?\s*,", RegexOptions.CultureInvariant)]
    private static partial Regex Start();

    /// <summary>
    /// What the rows of a file share: what its header names, the unit of its frequencies, and what takes the segments.
    /// </summary>
    private readonly record struct SegmentTable(SegmentRowHeader Header, FrequencyUnit Unit, SegmentSweeps Sweeps);
}
