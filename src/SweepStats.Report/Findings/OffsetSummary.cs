using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>The figures of the offset chart.</summary>
/// <param name="Groups">The groups drawn.</param>
/// <param name="ByTime">Whether sweeps stand at their times.</param>
/// <param name="WithoutTime">Floor sweeps left out because their times are not known.</param>
internal sealed record OffsetSummary(ImmutableArray<RepeatGroup> Groups, bool ByTime, int WithoutTime)
{
    /// <summary>The sweeps drawn, by role.</summary>
    public IEnumerable<(SweepRole Role, IReadOnlyList<RepeatedSweep> Sweeps)> Roles =>
        Groups.GroupBy(g => g.Role).Select(g => (g.Key, (IReadOnlyList<RepeatedSweep>)[.. g.SelectMany(r => r.Sweeps)]));

    /// <summary>Sizes of all offsets in dB, rising.</summary>
    public ImmutableArray<double> Sizes { get; } =
        [.. Groups.SelectMany(g => g.Sweeps).Select(s => Math.Abs(s.Offset.Value)).Order()];

    /// <summary>Size that half of the offsets do not pass, in dB.</summary>
    public double TypicalDb => (Sizes[(Sizes.Length - 1) / 2] + Sizes[Sizes.Length / 2]) / 2;

    /// <summary>The sweep that lies farthest off.</summary>
    public (RepeatGroup Group, RepeatedSweep Sweep) Farthest =>
        Groups.SelectMany(g => g.Sweeps.Select(s => (g, s))).MaxBy(s => Math.Abs(s.s.Offset.Value));

    /// <summary>The figures of the groups that have places; those of the others are counted.</summary>
    public static OffsetSummary Of(ImmutableArray<RepeatGroup> repeats, SweepPlaces places) =>
        new(places.Groups, places.ByTime, repeats.Except(places.Groups).Sum(g => g.Sweeps.Length));
}
