using SweepStats.Alignment;
using SweepStats.Repeats;
using SweepStats.Uncertainty;

namespace SweepStats.Doubts;

/// <summary>What a drift that shows in the sweeps may have moved reference and covered levels apart by.</summary>
/// <remarks>
/// Where all sweeps have times it is the slope's limit times what lies between the middle of the reference sweeps and that of the
/// specimen farthest from it. Without times it is the whole drift of a group; where nothing says that the reference was taken on
/// both sides of the specimens, the drift goes on at the same pace over the sweeps as they are listed. An error of unknown size
/// up to that limit: rectangular. Nothing is corrected.
/// </remarks>
public static class DriftAllowance
{
    /// <summary>Name of the error in budgets.</summary>
    public const string Name = "drift between reference and covered sweeps";

    // Less than this changes no figure.
    private const double LeastDb = 0.01;

    /// <summary>The error; null where no drift is clear.</summary>
    /// <param name="drifts">How reference and covered sweeps moved.</param>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="timing">When the reference was taken.</param>
    public static UncertaintyEntry? Of(ImmutableArray<DriftTest> drifts, AlignedCampaign campaign, ReferenceTiming timing)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        double half = drifts.Where(d => d.IsClear).Select(d => HalfWidthDb(d, campaign, timing)).DefaultIfEmpty(0).Max();
        return half < LeastDb ? null
            : new UncertaintyEntry { Name = Name, HalfWidthDb = half, Distribution = ErrorDistribution.Rectangular };
    }

    private static double HalfWidthDb(DriftTest drift, AlignedCampaign campaign, ReferenceTiming timing)
    {
        double paces = timing == ReferenceTiming.BothSides ? 1
            : SweepsApart(campaign) / (drift.Groups.Max(g => g.Sweeps.Length) - 1.0);
        return drift.FromReferenceDb() ?? Math.Abs(drift.Size) * Math.Max(1, paces);
    }

    // From the middle of the reference to the middle of the last specimen, as they are listed.
    private static double SweepsApart(AlignedCampaign campaign) =>
        (campaign.Reference.SweepCount / 2.0) + campaign.Covered.SkipLast(1)
            .Sum(c => c.Block.SweepCount) + (campaign.Covered[^1].Block.SweepCount / 2.0);
}
