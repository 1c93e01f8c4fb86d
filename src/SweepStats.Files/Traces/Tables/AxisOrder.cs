namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Brings sweeps whose frequencies do not rise from row to row into order where the rows leave no doubt: those from stop to start
/// are turned round, and segments that overlap in one frequency are joined. What was done is said; anything else keeps its doubt.
/// </summary>
internal sealed class AxisOrder(FaultList faults, GridMemory grids)
{
    // Two rows may as well stand in the wrong order.
    private const int FewestTurned = 3;

    private bool _told;

    /// <summary>Whether the frequencies fall from the first point to the last.</summary>
    private static bool Descends(FrequencyAxis axis)
    {
        ReadOnlySpan<double> hertz = axis.Hertz.AsSpan();
        for (int i = 1; i < hertz.Length; i++)
        {
            if (hertz[i] >= hertz[i - 1])
            {
                return false;
            }
        }

        return hertz.Length >= FewestTurned;
    }

    /// <summary>The frequencies from the lowest on, where they fall throughout; else as they are.</summary>
    public FrequencyAxis Turned(FrequencyAxis axis) =>
        axis.Grid is null && Descends(axis) ? grids.Of([.. axis.Hertz.Reverse()]) : axis;

    /// <summary>The traces of one table in order.</summary>
    /// <param name="traces">The traces as the rows give them.</param>
    /// <param name="axis">Their frequencies.</param>
    /// <param name="line">The line from 1 of a row.</param>
    public IEnumerable<Trace> Of(IEnumerable<Trace> traces, FrequencyAxis axis, Func<int, int> line)
    {
        if (axis.Grid is not null)
        {
            return traces;
        }

        ReadFault? doubt = AxisDoubt.Of(axis, faults.File, line);
        if (Descends(axis))
        {
            Tell("the sweep runs from stop to start: its rows were turned round");
            FrequencyAxis turned = Turned(axis);
            return [.. traces.Select(t => Without(doubt, t) with
            {
                Axis = turned,
                Levels = [.. t.Levels.Reverse()],
                Phases = [.. t.Phases.Reverse()],
                ReverseLevels = [.. t.ReverseLevels.Reverse()],
            })];
        }

        return SegmentJoints.Find(axis) is { Count: > 0 } joints ? Joined([.. traces], axis, joints, doubt, line) : traces;
    }

    private Trace[] Joined(Trace[] traces, FrequencyAxis axis, IReadOnlyList<int> joints, ReadFault? doubt, Func<int, int> line)
    {
        // What steps at a joint may be two things, such as a reference and what was measured after it.
        if (joints.Any(j => traces.Any(t => t.Blank is null && !SegmentJoints.Agree(t.Levels.AsSpan(), j, t.Unit))))
        {
            return traces;
        }

        Tell(SegmentJoints.Told(axis.Hertz[joints[0]], joints.Count, line(joints[0] - 1), line(joints[0]),
            "; the reading of the later row was kept"));
        HashSet<int> left = [.. joints.Select(j => j - 1)];
        FrequencyAxis joined = grids.Of([.. SegmentJoints.Without(axis.Hertz, left)]);
        return [.. traces.Select(t => Without(doubt, t) with
        {
            Axis = joined,
            Levels = SegmentJoints.Without(t.Levels, left),
            Phases = SegmentJoints.Without(t.Phases, left),
            ReverseLevels = SegmentJoints.Without(t.ReverseLevels, left),
        })];
    }

    private static Trace Without(ReadFault? doubt, Trace trace) =>
        doubt is null ? trace : trace with { Doubts = trace.Doubts.Remove(doubt) };

    private void Tell(string assumption)
    {
        if (!_told || !faults.Assumptions.Contains(assumption))
        {
            faults.Assume(assumption);
        }

        _told = true;
    }
}
