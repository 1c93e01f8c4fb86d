using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Mending;

/// <summary>The traces of the parts of a table, each called by what its rows have in common.</summary>
internal sealed class JoinedParts(string said)
{
    private readonly List<Trace> _traces = [];
    private readonly List<string> _assumptions = [said];
    private TraceReading? _first;

    /// <summary>All of them; null where no part holds a level.</summary>
    public TraceReading? Reading => _traces.Count == 0 ? null
        : _first! with { Traces = [.. _traces], Assumptions = [.. _assumptions], IsStacked = true };

    /// <summary>Whether a part has the frequencies of the first.</summary>
    public bool SharesAxis(TraceReading part) =>
        _first is null || part.Traces[0].Axis.Hertz.SequenceEqual(_first.Traces[0].Axis.Hertz);

    /// <summary>Adds a part.</summary>
    /// <param name="key">What its rows have in common.</param>
    /// <param name="part">What was read of them.</param>
    public void Add(string key, TraceReading part)
    {
        _first ??= part;
        _assumptions.AddRange(part.Assumptions.Where(a => !_assumptions.Contains(a)));
        if (BlockLabel.Other(key, part.Traces.Any(t => t.Unit is not null)) is { } other)
        {
            _assumptions.Add($"the rows called '{other}' are no level and were not read");
            return;
        }

        _traces.AddRange(part.Traces.Select(t => Named(t, key, part.Traces.Length == 1)));
    }

    private static Trace Named(Trace trace, string key, bool alone) => trace with
    {
        Column = key.Length == 0 ? trace.Column : alone ? key : $"{key}: {trace.Column}",
        TakenAt = SweepDate.Parse(key)?.At ?? trace.TakenAt,
        Settings = NamedDetector.Beside(trace.Settings, ColumnName.Of(key)),
    };
}
