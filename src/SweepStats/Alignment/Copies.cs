using System.Collections.Immutable;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds sweeps whose levels all agree.</summary>
internal static class Copies
{
    // A few hand-typed points agree by chance: so few must have this many different levels, a quarter of them.
    private const int FewestLevels = 8;

    // So many points of a sweep whose levels change at all agree in every one only where nothing scatters by a thousandth of the display's step: no bench does.
    private const int ManyPoints = 64;

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
        return different >= FewestLevels && (sweep.Levels.Length >= ManyPoints || different >= sweep.Levels.Length / 4);
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
