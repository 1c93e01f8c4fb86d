using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Rows of date, time, start, stop and step in Hz, a count, and then levels: each row is a segment of a sweep, and the segments up to the next that starts lower
/// make one sweep. Frequencies are start + k·step; values from the stop on are the next segment's first and are read once.
/// </summary>
internal sealed partial class SegmentRowLayout : ITraceLayout
{
    private const int FirstLevel = 6;

    private static readonly Separator Commas = new((byte)',', (byte)'.');

    /// <inheritdoc/>
    public bool Recognises(TraceText text)
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

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        var sweeps = new SegmentSweeps(text.File, options, faults);
        for (int i = 0; i < text.LineCount && !faults.Any; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (!line.IsEmpty && line[0] is not ((byte)'#' or (byte)'!' or (byte)'%'))
            {
                Take(line, i + 1, sweeps, faults);
            }
        }

        ImmutableArray<Trace> traces = faults.Any ? [] : sweeps.Traces();
        return faults.Any ? new TraceReading { Faults = faults.All } : new TraceReading { Traces = traces, IsStacked = true, Assumptions = faults.Assumptions };
    }

    private static void Take(ReadOnlySpan<byte> line, int number, SegmentSweeps sweeps, FaultList faults)
    {
        var reader = new FieldReader(line, Commas);
        Span<double> head = stackalloc double[FirstLevel];
        using var levels = new PooledList<double>(64);
        string when = "";
        for (int i = 0; reader.Next(out ReadOnlySpan<byte> field); i++)
        {
            if (i < 2)
            {
                when = (when + " " + Encoding.UTF8.GetString(field[..Math.Min(field.Length, 40)])).Trim();
            }
            else if (StrictNumber.TryParse(field, (byte)'.', 0, out double value))
            {
                if (i < FirstLevel)
                {
                    head[i] = value;
                }
                else
                {
                    levels.Add(value);
                }
            }
            else if (!(field.IsEmpty && reader.AtEnd))
            {
                faults.Add(number, $"'{Encoding.UTF8.GetString(field[..Math.Min(field.Length, 40)])}' is not a finite number", "correct the row or export the sweep again");
                return;
            }
            else
            {
                break;
            }
        }

        (double start, double stop, double step) = (head[2], head[3], head[4]);
        if (!(start >= 0 && step > 0 && stop > start) || levels.Count == 0 || Math.Abs(((stop - start) / step) - levels.Count) > 1.5)
        {
            faults.Add(
                number, FormattableString.Invariant($"a segment from {start:R} to {stop:R} Hz in steps of {step:R} Hz does not fit its {levels.Count} levels"), "each row needs date, time, start, stop, step, a count, and a level for every step");
            return;
        }

        sweeps.Add(new Segment(SweepDate.Parse(when)?.At, when, (start, stop, step), levels.Items.ToArray(), number));
    }

    [GeneratedRegex(@"^\s*\d{4}-\d\d-\d\d\s*,\s*\d\d:\d\d(?::\d\d(?:\.\d+)?)?\s*,\s*[\d.]+(?:[eE][+-]?\d+)?\s*,\s*[\d.]+(?:[eE][+-]?\d+)?\s*,", RegexOptions.CultureInvariant)]
    private static partial Regex Start();
}
