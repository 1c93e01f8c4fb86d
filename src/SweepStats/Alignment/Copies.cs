using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds sweeps whose levels all agree.</summary>
/// <remarks>
/// Sweeps taken for the same are copies unless chance makes them agree (<see cref="CopyChance"/>). Sweeps taken for different
/// things agree by chance only where the specimen shields nothing at all: many different levels are asked for there, or what
/// would make them copies of one kind.
/// </remarks>
internal static class Copies
{
    private const int FewestLevels = 8;

    // Levels as coarse as those of a sweep of which each stands four times agree by chance where nothing is shielded.
    private const int MostTimes = 4;

    /// <summary>The copies, in the order of the sweeps.</summary>
    /// <param name="sweeps">All that are used.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static ImmutableArray<DuplicateSweep> Among(ImmutableArray<Sweep> sweeps, int threads = 1)
    {
        var chance = new CopyChance(sweeps);
        var copies = ImmutableArray.CreateBuilder<DuplicateSweep>();
        foreach (List<Sweep> alike in Alike(sweeps, threads))
        {
            for (int i = 1; i < alike.Count; i++)
            {
                if (Twin(alike, i, chance) is { } twin)
                {
                    copies.Add(twin);
                }
            }
        }

        ImmutableArray<DuplicateSweep> found = copies.ToImmutable();
        return found.Length < 2 ? found : [.. found.OrderBy(twin => sweeps.IndexOf(twin.Copy))];
    }

    /// <summary>Whether a copy of some of the sweeps would be told from one that agrees by chance.</summary>
    public static bool CouldBeTold(ImmutableArray<Sweep> sweeps)
    {
        var chance = new CopyChance(sweeps);
        return sweeps.Any(s => IsVaried(s) || chance.IsTellable(s, 2));
    }

    private static DuplicateSweep? Twin(List<Sweep> alike, int place, CopyChance chance)
    {
        Sweep copy = alike[place];
        SweepKind kind = SweepKind.Of(copy);
        Sweep? repeated = alike.Take(place).FirstOrDefault(s => SweepKind.Of(s) == kind);
        if (repeated is not null && chance.IsTellable(copy, alike.Count(s => SweepKind.Of(s) == kind)))
        {
            return new DuplicateSweep(repeated, copy, SameKind: true);
        }

        Sweep? other = alike.Take(place).FirstOrDefault(s => SweepKind.Of(s) != kind);
        return other is not null && (IsVaried(copy) || chance.IsTellable(copy, 2))
            ? new DuplicateSweep(other, copy, SameKind: false) : null;
    }

    private static bool IsVaried(Sweep sweep)
    {
        int different = sweep.Levels.Distinct().Count();
        return different >= FewestLevels && different >= sweep.Levels.Length / MostTimes;
    }

    // Sweeps with the same levels, in order; only such as have one like them.
    private static IEnumerable<List<Sweep>> Alike(ImmutableArray<Sweep> sweeps, int threads)
    {
        double[] keys = SideBySide.Of(sweeps.Length, threads, i => Key(sweeps[i]));
        foreach (IGrouping<double, Sweep> near in
            sweeps.Zip(keys).GroupBy(s => s.Second, s => s.First).Where(g => g.Skip(1).Any()))
        {
            List<List<Sweep>> groups = [];
            foreach (Sweep sweep in near)
            {
                List<Sweep>? group = groups.Find(g => CopyChance.SameLevels(g[0], sweep));
                if (group is null)
                {
                    groups.Add(group = []);
                }

                group.Add(sweep);
            }

            foreach (List<Sweep> group in groups.Where(g => g.Count > 1))
            {
                yield return group;
            }
        }
    }

    // Sweeps with the same levels have the same sum of level times place; few others do.
    private static double Key(Sweep sweep)
    {
        ReadOnlySpan<double> levels = sweep.Levels.AsSpan();
        double key = 0;
        for (int f = 0; f < levels.Length; f++)
        {
            key += levels[f] * f;
        }

        return key;
    }
}
