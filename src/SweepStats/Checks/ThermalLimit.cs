using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The lowest level that noise of an input at room temperature averages to.</summary>
/// <param name="LevelDbm">k·T·B in dBm.</param>
/// <param name="Hertz">B: what all floor sweeps state, else what the campaign states.</param>
/// <param name="IsStated">Whether it is stated; else 1 Hz, since swept receivers have none narrower.</param>
internal readonly record struct ThermalLimit(double LevelDbm, double Hertz, bool IsStated)
{
    private const double Narrowest = 1;

    /// <summary>In words.</summary>
    public string Told => string.Create(Amount.Print, $"the thermal noise of a bandwidth of {Hertz:0.###} Hz at 290 K "
        + $"({LevelDbm:0.0} dBm)");

    /// <summary>The limit of sweeps of a role in dBm: covered ones may have another bandwidth than the floor.</summary>
    public double Of(SweepRole role, Evidence seen) =>
        LevelDbm + (role == SweepRole.Floor ? 0 : seen.Floor?.BandwidthShiftDb ?? 0);

    /// <summary>The limit; null where levels are not in dBm, or the stated bandwidth is none.</summary>
    public static ThermalLimit? Of(Evidence seen) => seen.Campaign.Scale == LevelScale.DecibelMilliwatts
        && (Stated(seen) ?? Narrowest) is > 0 and var hertz
            ? new ThermalLimit(ThermalNoise.DbmPerHertz() + (10 * Math.Log10(hertz)), hertz, Stated(seen) is not null) : null;

    private static double? Stated(Evidence seen)
    {
        var stated = (seen.Campaign.Floor?.Sweeps ?? []).Select(s => s.Settings.ResolutionBandwidthHz).Distinct().ToList();
        return stated is [{ } one] ? one : stated.Count > 1 ? null : seen.Setup.ResolutionBandwidthHz;
    }
}
