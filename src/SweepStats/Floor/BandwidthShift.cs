using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>Brings a floor to the resolution bandwidth of the covered sweeps: noise power is proportional to it.</summary>
internal static class BandwidthShift
{
    /// <summary>10·log10 of covered over floor bandwidth in dB; 0 where a side states none, or several.</summary>
    public static double Db(AlignedCampaign campaign)
    {
        double? floor = Stated(campaign.Floor?.Sweeps ?? []);
        double? covered = Stated(campaign.Covered.SelectMany(c => c.Block.Sweeps));
        return floor is { } from && covered is { } to ? 10 * Math.Log10(to / from) : 0;
    }

    private static double? Stated(IEnumerable<Sweep> sweeps)
    {
        var stated = sweeps.Select(s => s.Settings.ResolutionBandwidthHz).Distinct().ToList();
        return stated is [{ } one] && one > 0 ? one : null;
    }
}
