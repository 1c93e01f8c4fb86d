using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>Joins segments to sweeps: a new one begins where a segment does not start above the last.</summary>
internal sealed class SegmentSweeps(string file, TraceReadOptions options, FaultList faults)
{
    private readonly List<List<Segment>> _sweeps = [];

    public void Add(Segment segment)
    {
        if (_sweeps.Count == 0 || segment.Range.Start <= _sweeps[^1][^1].Range.Start)
        {
            _sweeps.Add([]);
        }

        _sweeps[^1].Add(segment);
    }

    /// <summary>A trace for each sweep.</summary>
    public ImmutableArray<Trace> Traces()
    {
        faults.Assume("each row is a segment of a sweep; frequencies are start plus steps, in Hz");
        if (_sweeps.Any(s => s.Any(r => r.Own < r.Levels.Length)))
        {
            faults.Assume("a level at or above a segment's stop was taken for the first of the next segment and not read twice");
        }

        if (_sweeps.Any(s => s.Select(r => r.When).Distinct().Count() > 1))
        {
            faults.Assume("segments of different times were joined to one sweep");
        }

        if (options.LevelUnit is { } told)
        {
            faults.Assume($"levels are in {told.Symbol()}, as {options.StatedIn} says");
        }

        return [.. _sweeps.Select(TraceOf)];
    }

    private Trace TraceOf(List<Segment> sweep, int index)
    {
        int points = sweep.Sum(r => r == sweep[^1] ? r.Levels.Length : r.Own);
        var hertz = new double[points];
        var levels = new double[points];
        var first = new List<int>(sweep.Count);
        int at = 0;
        foreach (Segment segment in sweep)
        {
            first.Add(at);
            int own = segment == sweep[^1] ? segment.Levels.Length : segment.Own;
            for (int k = 0; k < own; k++)
            {
                hertz[at] = segment.Range.Start + (k * segment.Range.Step);
                levels[at++] = segment.Levels[k];
            }
        }

        int Line(int point) => sweep[PartOf(first, point)].Line;
        string name = (index + 1).ToString(CultureInfo.InvariantCulture);
        var column = new LevelColumn(0, name, options.LevelUnit);
        FrequencyAxis axis = options.Grids.Of(hertz);
        ReadFault? falls = AxisDoubt.Of(axis, file, Line);
        ImmutableArray<ReadFault> doubts = column.Unit is null
            ? [UnstatedUnitFault.InSettingsAlone(file)]
            : LevelDoubts.Of(column, levels, (file, Line));
        return new Trace(name, "level", options.LevelUnit, axis, ImmutableCollectionsMarshal.AsImmutableArray(levels))
        {
            TakenAt = sweep[0].At,
            Blank = LevelDoubts.Blank(column.Unit, levels),
            Doubts = falls is null ? doubts : [falls, .. doubts],
        };
    }

    private static int PartOf(List<int> first, int point)
    {
        int at = first.BinarySearch(point);
        return at >= 0 ? at : ~at - 1;
    }
}
