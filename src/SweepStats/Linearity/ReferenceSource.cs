using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Linearity;

/// <summary>The level of the source at which the reference was taken.</summary>
internal static class ReferenceSource
{
    /// <summary>Of one reference sweep, in dBm: what it states, else what the campaign states; null where neither does.</summary>
    public static double? Of(Sweep sweep, double? campaignDbm) => sweep.SourceDbm ?? campaignDbm;

    /// <summary>Whether it is known of any reference sweep.</summary>
    public static bool IsKnown(AlignedCampaign campaign, double? campaignDbm) =>
        campaign.Reference.Sweeps.Any(s => Of(s, campaignDbm) is not null);
}
