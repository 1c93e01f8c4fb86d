using System.Collections.Immutable;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds sweeps whose levels all agree.</summary>
internal static class Copies
{
    // A few hand-typed points, or levels shown in coarse steps, agree by chance: a copy must have this many different levels, and a quarter of its points.
    private const int FewestLevels = 8;

    public static ImmutableArray<DuplicateSweep> Among(ImmutableArray<Sweep> sweeps)
    {
        var copies = ImmutableArray.CreateBuilder<DuplicateSweep>();
        Dictionary<int, List<Sweep>> seen = [];
        foreach (Sweep sweep in sweeps.Where(IsTellable))
        {
            int key = Key(sweep);
            if (!seen.TryGetValue(key, out List<Sweep>? alike))
            {
                seen.Add(key, alike = []);
            }

            Sweep? twin = alike.Find(s => s.Grid.Equals(sweep.Grid) && s.Levels.AsSpan().SequenceEqual(sweep.Levels.AsSpan()));
            if (twin is null)
            {
                alike.Add(sweep);
            }
            else
            {
                copies.Add(new DuplicateSweep(twin, sweep, twin.Role == sweep.Role && twin.Lot == sweep.Lot && twin.Specimen == sweep.Specimen));
            }
        }

        return copies.ToImmutable();
    }

    /// <summary>Whether the levels are many and different enough for a copy not to come about by chance.</summary>
    public static bool IsTellable(Sweep sweep)
    {
        int different = sweep.Levels.Distinct().Take(Math.Max(FewestLevels, sweep.Levels.Length / 4)).Count();
        return different >= FewestLevels && different >= sweep.Levels.Length / 4;
    }

    private static int Key(Sweep sweep)
    {
        var key = default(HashCode);
        foreach (double level in sweep.Levels)
        {
            key.Add(level);
        }

        return key.ToHashCode();
    }
}
