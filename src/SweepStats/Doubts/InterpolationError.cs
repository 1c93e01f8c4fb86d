using SweepStats.Alignment;
using SweepStats.Uncertainty;

namespace SweepStats.Doubts;

/// <summary>
/// What interpolation may have moved reference and covered levels apart by: an error of unknown size up to its bound,
/// rectangular.
/// </summary>
public static class InterpolationError
{
    /// <summary>The error; null where nothing was interpolated between readings.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    public static UncertaintyEntry? Of(AlignedCampaign campaign)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        return campaign.Interpolation is { HalfWidthDb: > 0 and var half }
            ? new UncertaintyEntry
            {
                Name = Interpolation.ErrorName,
                HalfWidthDb = half,
                Distribution = ErrorDistribution.Rectangular,
            }
            : null;
    }
}
