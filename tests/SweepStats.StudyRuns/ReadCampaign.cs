using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.StudyRuns;

/// <summary>
/// A rehearsed campaign as an analysis reads it: aligned, its floor estimated, the shielding of each specimen estimated.
/// </summary>
/// <param name="Aligned">The sweeps.</param>
/// <param name="Curves">Shielding of the specimens, in the order of the sweeps.</param>
internal sealed record ReadCampaign(AlignedCampaign Aligned, ImmutableArray<ShieldingCurve> Curves)
{
    /// <summary>Reads a campaign with floor sweeps by the stated averaging, with intervals of 95 %.</summary>
    public static ReadCampaign Of(Campaign campaign, Averaging stated, ImmutableArray<UncertaintyEntry> errors)
    {
        AlignedCampaign aligned = Aligner.Align(campaign, null);
        NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, stated);
        var estimator = new ShieldingEstimator(aligned, floor, Confidence.NinetyFive, errors);
        return new ReadCampaign(aligned, [.. aligned.Covered.Select(estimator.Estimate)]);
    }

    /// <summary>Readings known from below only.</summary>
    public Tally Capped() =>
        Tally.Over(Curves.SelectMany(c => c.Readings).Select(r => (bool?)(r.State == ShieldingState.Capped)));
}
