using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Clipping;

/// <summary>Finds the readings of reference and covered sweeps that the receiver, or its display, cuts off.</summary>
/// <remarks>
/// Each block is asked for a flat top first (<see cref="PlateauSearch"/>), then for more ties at its highest level than chance
/// allows (<see cref="TiedTops"/>). The receiver is the same for all: a block whose highest level is a limit that another one
/// shows is cut off there too, however few of its readings reach it.
/// </remarks>
internal static class ClippingSearch
{
    /// <param name="campaign">The sweeps.</param>
    /// <param name="floor">All floor sweeps, also those that show no noise: they show where the display ends.</param>
    /// <param name="threads">Threads to use.</param>
    public static CampaignClipping In(AlignedCampaign campaign, SweepBlock? floor, int threads = 1)
    {
        SweepBlock[] blocks = [.. campaign.Signals()];
        ClippedReadings[] own = Each(blocks, b => Own(b, campaign), threads);
        double[] limits = [.. own.Where(c => c.Kind != ClippingKind.None).Select(c => c.LevelDb)];
        ImmutableArray<ClippedReadings> found =
        [
            .. own.Zip(blocks, (c, b) => c.Kind == ClippingKind.None && TopLevel.IsAmong(limits, b.HighestDb)
                ? ClippedReadings.At(ClippingKind.Shared, b, [b.HighestDb]) : c),
        ];
        SweepBlock[] shown = floor is null ? blocks : [.. blocks, floor];
        return new CampaignClipping(found[0], found[1..],
            [.. Each(blocks[1..], b => BottomReadings.Find(b, Without(shown, b)), threads)]);
    }

    private static T[] Each<T>(SweepBlock[] blocks, Func<SweepBlock, T> find, int threads) =>
        SideBySide.Of(blocks.Length, threads, i => find(blocks[i]));

    private static ClippedReadings Own(SweepBlock block, AlignedCampaign campaign)
    {
        PlateauSearch.Plateau flat = campaign.IsNormalised(block) ? PlateauSearch.Plateau.None
            : PlateauSearch.Find(block, Others(campaign, block));
        return flat.Longest > 0 ? ClippedReadings.At(ClippingKind.Wide, block, flat.Levels, flat.Longest)
            : TiedTops.Limit(block) is { } top ? ClippedReadings.At(ClippingKind.Tied, block, [top])
            : ClippedReadings.None;
    }

    private static IEnumerable<SweepBlock> Others(AlignedCampaign campaign, SweepBlock block) =>
        Without(campaign.Covered.Select(c => c.Block).Append(campaign.Reference).Append(campaign.Floor)
            .OfType<SweepBlock>(), block);

    private static IEnumerable<SweepBlock> Without(IEnumerable<SweepBlock> blocks, SweepBlock block) =>
        blocks.Where(other => !ReferenceEquals(other, block));
}
