using System.Collections.Immutable;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What a drift is looked for along.</summary>
internal enum DriftAlong
{
    /// <summary>The time of each sweep, in hours since the first.</summary>
    Clock,

    /// <summary>The order of the sweeps in their group, from 0 to 1: a steady drift of sweeps taken one after the other.</summary>
    Order,

    /// <summary>The first half of a group against the second, 0 and 1: sweeps taken before and after something else.</summary>
    Halves,
}

/// <summary>How the level of repeated sweeps moved, as a straight line along time, order or halves.</summary>
/// <param name="Along">What x is.</param>
/// <param name="Groups">The groups looked at together; each keeps a level of its own.</param>
/// <param name="X">Where each sweep of each group lies.</param>
/// <param name="Slope">dB per unit of x.</param>
internal sealed record DriftTest(DriftAlong Along, ImmutableArray<RepeatGroup> Groups, ImmutableArray<double[]> X, SlopeEstimate Slope)
{
    /// <summary>From the smallest to the largest x: the hours of the day, or 1.</summary>
    public double Span => X.Max(x => x.Max()) - X.Min(x => x.Min());

    /// <summary>dB from one end to the other.</summary>
    public double Size => Slope.Value * Span;

    /// <summary>Sweeps looked at.</summary>
    public int SweepCount => Groups.Sum(g => g.Sweeps.Length);

    /// <summary>The clearest of the tests that can be made, one for each family, with the chance that any of its family finds as much without a drift.</summary>
    /// <remarks>
    /// Reference and covered sweeps together where all have times; else each role by itself, along order and along halves, since a pause between the sweeps
    /// before and after a specimen does not show in their order. A specimen that shields more than another is no drift; nor is a placement. Floor sweeps say
    /// little about the level of a signal and are left out.
    /// </remarks>
    public static IEnumerable<(DriftTest Test, double Probability)> Clearest(ImmutableArray<RepeatGroup> repeats)
    {
        ImmutableArray<RepeatGroup> signal = [.. repeats.Where(g => g.Role is SweepRole.Reference or SweepRole.Covered)];
        return (ByClock(signal) is { } together ? [[together]] : new[] { SweepRole.Reference, SweepRole.Covered }.Select(role => ByOrder([.. signal.Where(g => g.Role == role)])))
            .Where(family => family.Count > 0)
            .Select(family => (Test: family.MinBy(t => t.Slope.Probability)!, family.Count))
            .Select(best => (best.Test, Math.Min(1, best.Count * best.Test.Slope.Probability)));
    }

    private static DriftTest? ByClock(ImmutableArray<RepeatGroup> groups)
    {
        var sweeps = groups.SelectMany(g => g.Sweeps).Select(s => s.Sweep).ToList();
        if (sweeps.Count == 0 || sweeps.Exists(s => s.TakenAt is null))
        {
            return null;
        }

        DateTimeOffset first = sweeps.Min(s => s.TakenAt!.Value);
        return Of(DriftAlong.Clock, groups, (group, j) => (group.Sweeps[j].Sweep.TakenAt!.Value - first).TotalHours);
    }

    private static List<DriftTest> ByOrder(ImmutableArray<RepeatGroup> groups) =>
    [
        .. new[]
        {
            Of(DriftAlong.Order, groups, (group, j) => (double)j / (group.Sweeps.Length - 1)),
            Of(DriftAlong.Halves, groups, (group, j) => j < (group.Sweeps.Length + 1) / 2 ? 0 : 1),
        }.OfType<DriftTest>(),
    ];

    private static DriftTest? Of(DriftAlong along, ImmutableArray<RepeatGroup> groups, Func<RepeatGroup, int, double> place)
    {
        ImmutableArray<double[]> x = [.. groups.Select(g => Enumerable.Range(0, g.Sweeps.Length).Select(j => place(g, j)).ToArray())];
        return CommonSlope.Of([.. groups.Zip(x, (g, at) => (at, g.Offsets()))]) is { } slope ? new DriftTest(along, groups, x, slope) : null;
    }
}
