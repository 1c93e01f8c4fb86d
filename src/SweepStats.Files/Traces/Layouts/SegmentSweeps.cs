using System.Globalization;
using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>Joins segments to sweeps: a new one begins where a segment does not start above the last.</summary>
internal sealed class SegmentSweeps(string file, LevelUnit? stated, FrequencyUnit frequencyUnit, TraceReadOptions options,
    FaultList faults)
{
    private readonly List<List<Segment>> _sweeps = [];

    /// <summary>Takes the next segment of the file; in their order alone they tell where a sweep ends.</summary>
    public void Add(Segment segment)
    {
        if (_sweeps.Count == 0 || segment.Range.Start <= _sweeps[^1][^1].Range.Start)
        {
            _sweeps.Add([]);
        }

        _sweeps[^1].Add(segment);
    }

    /// <summary>A trace for each sweep.</summary>
    /// <param name="preamble">What the lines above state.</param>
    public ImmutableArray<Trace> Traces(Preamble preamble)
    {
        faults.Assume($"each row is a segment of a sweep; frequencies are start plus steps, in {frequencyUnit.Symbol()}");
        if (_sweeps.Any(s => Enumerable.Range(0, s.Count).Any(i => Own(s, i) < s[i].Levels.Length)))
        {
            faults.Assume(
                "a level at the frequency where the next segment starts was taken for that segment's first and read once");
        }

        if (_sweeps.Any(s => s.Select(r => r.When).Distinct().Count() > 1))
        {
            faults.Assume("segments of different times were joined to one sweep");
        }

        if (stated is null && options.LevelUnit is { } told)
        {
            faults.Assume($"levels are in {told.Symbol()}, as {options.StatedIn} says");
        }

        return [.. _sweeps.Select((s, i) => TraceOf(s, i, preamble))];
    }

    // The levels of a segment below the start of the next: what a segment holds beyond is the other's.
    private static int Own(List<Segment> sweep, int index)
    {
        Segment segment = sweep[index];
        if (index + 1 == sweep.Count)
        {
            return segment.Levels.Length;
        }

        double steps = (sweep[index + 1].Range.Start - segment.Range.Start) / segment.Range.Step;
        return (int)Math.Clamp(Math.Ceiling(steps - SmallPart), 1, segment.Levels.Length);
    }

    // Of a step: what rounding does to a start.
    private const double SmallPart = 1e-3;

    private Trace TraceOf(List<Segment> sweep, int index, Preamble preamble)
    {
        var joined = new JoinedSegments(sweep.Count);
        for (int i = 0; i < sweep.Count; i++)
        {
            joined.Add(sweep[i], Own(sweep, i));
        }

        string name = (index + 1).ToString(CultureInfo.InvariantCulture);
        LevelUnit? unit = stated ?? options.LevelUnit;
        var column = new LevelColumn(0, name, unit);
        double[] levels = joined.Levels;
        FrequencyAxis axis = options.Grids.Of(joined.Hertz);
        ReadFault? falls = AxisDoubt.Of(axis, file, joined.Line);
        ImmutableArray<ReadFault> doubts = column.Unit is null
            ? [UnstatedUnitFault.InSettingsAlone(file)]
            : LevelDoubts.Of(column, levels, new(file, joined.Line));
        return new Trace(name, "level", unit, axis, ImmutableCollectionsMarshal.AsImmutableArray(levels))
        {
            Settings = preamble.Settings,
            TakenAt = sweep[0].At ?? preamble.Taken.At,
            Blank = LevelDoubts.Blank(column.Unit, levels),
            Doubts = falls is null ? doubts : [falls, .. doubts],
        };
    }
}
