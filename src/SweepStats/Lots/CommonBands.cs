using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The named bands of several campaigns: all that are named, in the order in which they come.</summary>
internal sealed class CommonBands
{
    /// <summary>Bands of one name belong together: compared where limits agree and a frequency of the grid lies within.</summary>
    public CommonBands(IReadOnlyList<CampaignLots> campaigns, FrequencyGrid grid)
    {
        BandLeftOut[] named =
        [
            .. campaigns.SelectMany(c => c.NamedBands.Select(b => (b.Name, Of: new CampaignBand(c.Label, b.Band))))
                .GroupBy(b => b.Name, StringComparer.Ordinal).Select(g => new BandLeftOut(g.Key, [.. g.Select(b => b.Of)])),
        ];
        bool Compared(BandLeftOut band) =>
            !band.LimitsDiffer && Enumerable.Range(0, grid.Count).Any(f => band.Of[0].Limits.Contains(grid[f]));
        All = [.. named.Where(Compared).Select(b => new NamedBand(b.Name, b.Of[0].Limits))];
        LeftOut = [.. named.Where(b => !Compared(b))];
    }

    /// <summary>Those of one meaning that hold a compared frequency.</summary>
    public ImmutableArray<NamedBand> All { get; }

    /// <summary>The others.</summary>
    public ImmutableArray<BandLeftOut> LeftOut { get; }
}
