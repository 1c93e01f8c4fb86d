namespace SweepStats.Files.Traces;

/// <summary>
/// Takes from what a file holds the traces that a campaign uses as sweeps; refuses the file where one of them cannot be a sweep.
/// </summary>
internal static class SweepTraces
{
    private const string Transmission = "S21";

    /// <summary>Its sweeps alone; faults where a named column is missing, units differ or one is doubtful.</summary>
    public static TraceReading Of(string file, TraceReading seen, TraceReadOptions options)
    {
        if (!seen.Faults.IsEmpty)
        {
            return seen;
        }

        bool all = options.Columns.IsEmpty;
        if (!all && seen.Traces.Length != options.Columns.Length)
        {
            return TraceReading.Refused(
                file, null, FormattableString.Invariant(
                    $"{options.Columns.Length} columns are named and {seen.Traces.Length} traces answer to them"),
                "name each trace by its number from 1, as 'sweepstats look' lists them") with
            { Sha256 = seen.Sha256 };
        }

        List<string> assumptions = [.. seen.Assumptions];
        ImmutableArray<Trace> traces = all ? Unnamed(seen.Traces, assumptions) : seen.Traces;
        if (all && Mixed(traces) is { } mixed)
        {
            return TraceReading.Refused(file, null, mixed, "name the trace to read " + options.NamedWhere) with
            { Sha256 = seen.Sha256 };
        }

        ImmutableArray<ReadFault> doubts = [.. traces.SelectMany(t => t.Doubts).Distinct()];
        return doubts.IsEmpty
            ? seen with { Traces = traces, Assumptions = [.. assumptions] }
            : seen with { Traces = [], Assumptions = [], Faults = doubts };
    }

    private static string? Mixed(ImmutableArray<Trace> traces) => traces.Select(t => t.Unit).Distinct().Count() < 2 ? null
        : "the traces of the file are in different units: "
            + string.Join(", ", traces.Take(8).Select(t => $"{t.Column} in {t.Unit?.Symbol() ?? "no stated unit"}"));

    // Of S-parameters only the transmission is an attenuation; of the rest whatever was ever written to.
    private static ImmutableArray<Trace> Unnamed(ImmutableArray<Trace> traces, List<string> assumptions)
    {
        if (traces.Any(t => t.Quantity == Transmission))
        {
            ImmutableArray<Trace> through = [.. traces.Where(t => t.Quantity == Transmission)];
            Trace[] others = [.. traces.Except(through)];
            if (others.Length > 0)
            {
                assumptions.Add($"{Transmission} was read, not {string.Join(", ", others.Select(t => t.Column))}");
            }

            return through;
        }

        ImmutableArray<Trace> written = [.. traces.Where(t => t.Blank is null)];
        if (written.IsEmpty)
        {
            return traces;
        }

        if (written.Where(t => t.Quantity != "correction").ToImmutableArray() is { IsEmpty: false } levels
            && levels.Length < written.Length)
        {
            assumptions.Add($"corrections were left out: {string.Join(", ", written.Except(levels).Select(t => t.Column))}");
            written = levels;
        }

        assumptions.AddRange(traces.Where(t => t.Blank is not null).Select(t => $"trace {t.Column} was left out: {t.Blank}"));
        return written;
    }
}
