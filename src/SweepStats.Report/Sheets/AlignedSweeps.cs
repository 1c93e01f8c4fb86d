using SweepStats.Alignment;

namespace SweepStats.Report.Sheets;

/// <summary>How many sweeps the figures rest on.</summary>
/// <param name="Floor">Source off.</param>
/// <param name="Reference">Nothing in the way.</param>
/// <param name="Covered">Of all specimens.</param>
internal sealed record AlignedSweeps(int Floor, int Reference, int Covered)
{
    /// <summary>The counts without copies and without sweeps that were left out.</summary>
    public static AlignedSweeps Of(AlignedCampaign campaign) =>
        new(campaign.Floor?.SweepCount ?? 0, campaign.Reference.SweepCount, campaign.Covered.Sum(c => c.Block.SweepCount));
}
