using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Repeats;
using SweepStats.Report.Drawing;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>
/// Where the sweeps of the offset chart stand: at the time they were taken, or side by side, group by group, where times are not
/// known.
/// </summary>
/// <param name="Groups">The groups that are drawn.</param>
/// <param name="Places">Place of each of their sweeps.</param>
/// <param name="ByTime">Whether places are times.</param>
/// <param name="Axis">The axis of the places.</param>
internal sealed record SweepPlaces(ImmutableArray<RepeatGroup> Groups, ImmutableArray<double[]> Places, bool ByTime, Axis Axis)
{
    /// <summary>By time where every sweep but those of the floor has a time of its own; otherwise side by side.</summary>
    public static SweepPlaces Of(ImmutableArray<RepeatGroup> groups)
    {
        ImmutableArray<RepeatGroup> timed = [.. groups.Where(IsTimed)];
        return groups.All(g => g.Role == SweepRole.Floor || IsTimed(g)) && timed.Any(g => g.Role != SweepRole.Floor)
            ? ByClock(timed) : SideBySide(groups);
    }

    /// <summary>Points of a group: place and offset of each sweep, from left to right.</summary>
    public List<DataPoint> Points(int group) =>
        [.. Places[group].Zip(Groups[group].Sweeps, (x, s) => new DataPoint(x, s.Offset.Value)).OrderBy(p => p.X)];

    // Sweeps of one file often share its one time; side by side they can be told apart.
    private static bool IsTimed(RepeatGroup group) =>
        group.Sweeps.All(s => s.Sweep.TakenAt is not null)
            && group.Sweeps.DistinctBy(s => s.Sweep.TakenAt).Count() == group.Sweeps.Length;

    private static SweepPlaces ByClock(ImmutableArray<RepeatGroup> groups)
    {
        List<DateTimeOffset> times = [.. groups.SelectMany(g => g.Sweeps).Select(s => s.Sweep.TakenAt!.Value).Order()];
        var axis = new ClockAxis(times[0], times[^1]);
        return new SweepPlaces(groups,
            [.. groups.Select(g => g.Sweeps.Select(s => axis.Seconds(s.Sweep.TakenAt!.Value)).ToArray())], true, axis);
    }

    private static SweepPlaces SideBySide(ImmutableArray<RepeatGroup> groups)
    {
        var places = ImmutableArray.CreateBuilder<double[]>(groups.Length);
        int next = 0;
        foreach (RepeatGroup group in groups)
        {
            places.Add([.. Enumerable.Range(next, group.Sweeps.Length).Select(i => (double)i)]);
            next += group.Sweeps.Length + 1;
        }

        return new SweepPlaces(groups, places.ToImmutable(), false, GroupAxis.Of(groups, places.ToImmutable()));
    }
}
