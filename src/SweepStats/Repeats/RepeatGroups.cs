using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>Compares sweeps that repeat each other: y(j, f) = middle(f) + offset(j) + rest(j, f).</summary>
/// <remarks>
/// The middle is the median over the sweeps, so that one odd sweep does not move what the others are held against. Levels in dB.
/// Near the floor readings say more about the noise than about the sweep, so only frequencies whose mean stands 10 dB above it
/// count.
/// </remarks>
public static class RepeatGroups
{
    private const double ClearOfFloorDb = 10;

    // With fewer frequencies a sweep's offset cannot be told from the scatter of its points.
    private const int FewestPoints = 8;

    /// <summary>All groups of two and more sweeps that can be compared: floor, reference, then specimens by name.</summary>
    /// <param name="campaign">Sweeps on their common grid.</param>
    /// <param name="floor">The floor; null where none is known: then all frequencies count.</param>
    /// <param name="threads">Threads to use; the groups do not depend on it.</param>
    public static ImmutableArray<RepeatGroup> Of(AlignedCampaign campaign, NoiseFloor? floor, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        (SweepBlock Block, SpecimenName? Specimen)[] blocks = [.. Blocks(campaign)];
        RepeatGroup[] Groups(int i) => [.. Of(blocks[i].Block, blocks[i].Specimen, floor)];
        return [.. SideBySide.Of(blocks.Length, threads, Groups).SelectMany(g => g)];
    }

    private static IEnumerable<RepeatGroup> Of(SweepBlock block, SpecimenName? specimen, NoiseFloor? floor)
    {
        foreach ((string? placement, int[] rows) in ByPlacement(block))
        {
            ImmutableArray<int> points = [.. Points(block, rows, floor)];
            if (rows.Length >= 2 && points.Length >= FewestPoints)
            {
                yield return new RepeatGroup
                {
                    Role = block.Sweeps[0].Role,
                    Specimen = specimen,
                    Placement = placement,
                    Points = points,
                    Sweeps = Compared(block, rows, points),
                };
            }
        }
    }

    private static IEnumerable<(SweepBlock Block, SpecimenName? Specimen)> Blocks(AlignedCampaign campaign)
    {
        if (campaign.Floor is { } floor)
        {
            yield return (floor, null);
        }

        yield return (campaign.Reference, null);
        foreach (SpecimenBlock specimen in campaign.Covered)
        {
            yield return (specimen.Block, specimen.Name);
        }
    }

    private static IEnumerable<(string? Placement, int[] Rows)> ByPlacement(SweepBlock block)
    {
        // What a reference or floor sweep was called by is no putting back.
        string? Placement(Sweep sweep) => sweep.Role == SweepRole.Covered ? sweep.Placement : null;
        var placements = Enumerable.Range(0, block.SweepCount).GroupBy(j => Placement(block.Sweeps[j])).ToList();
        return placements.Count == block.SweepCount
            ? [(null, [.. Enumerable.Range(0, block.SweepCount)])]
            : placements.Select(p => (p.Key, p.ToArray()));
    }

    /// <summary>Frequencies at which sweeps of one block can be compared: clear of the floor, nothing transmitting.</summary>
    internal static int[] Points(SweepBlock block, int[] rows, NoiseFloor? floor)
    {
        bool isFloor = block.Sweeps[0].Role == SweepRole.Floor;
        ReadOnlySpan<double> means = floor is null || isFloor ? [] : block.Means(rows).AsSpan();
        List<int> points = [];
        for (int f = 0; f < block.PointCount; f++)
        {
            if (floor is null || (!floor.Ambient[f] && (isFloor || means[f] >= floor.LevelDb[f] + ClearOfFloorDb)))
            {
                points.Add(f);
            }
        }

        return [.. points];
    }

    // About the median over the sweeps.
    private static ImmutableArray<RepeatedSweep> Compared(SweepBlock block, int[] rows, ImmutableArray<int> points)
    {
        KeptRows middle =
            block.Store.Keep(new RowMedians(rows.Length).Of(j => block.Row(rows[j], points.AsSpan()), points.Length));
        return [.. rows.Select(row => Compared(block.Sweeps[row], new SweepRests(block, row, points, middle)))];
    }

    private static RepeatedSweep Compared(Sweep sweep, SweepRests rests) =>
        new(sweep, new Decibels(rests.OffsetDb), new Decibels(rests.ShapeDb), rests);
}
