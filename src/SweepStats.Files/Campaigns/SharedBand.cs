using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The band that will be analysed, in Hz: what all sweeps share of the band that the campaign states.</summary>
internal readonly record struct SharedBand(double Low, double High)
{
    // Exports round frequencies.
    private const double ShareOfFrequency = 1e-6;

    // What a frequency typed in MHz, GHz or kHz has to be multiplied with.
    private static readonly (double Factor, string Power)[] OtherUnits = [(1e6, "e6"), (1e9, "e9"), (1e3, "e3")];

    /// <summary>The band; null where the sweeps share none, of which their comparison has more to say.</summary>
    public static SharedBand? Of(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        FrequencyGrid[] grids =
            [.. sweeps.Where(s => s.ExcludedBecause is null
                && s.Role is SweepRole.Floor or SweepRole.Reference or SweepRole.Covered).Select(s => s.Grid)];
        if (grids.Length == 0)
        {
            return null;
        }

        double low = Math.Max(grids.Max(g => g[0].Value), settings.Plan.Band?.Start.Value ?? 0);
        double high = Math.Min(grids.Min(g => g[^1].Value), settings.Plan.Band?.Stop.Value ?? double.PositiveInfinity);
        return low <= high ? new SharedBand(low, high) : null;
    }

    /// <summary>Whether a band ends below its start, which is then told.</summary>
    public static bool IsReversed(KeyReader keys, double? start, double? stop)
    {
        if (!(start > stop))
        {
            return false;
        }

        // More often a power of ten is missing than the two are exchanged.
        keys.Refuse("stop_hz", FormattableString.Invariant($"the band ends at {stop:R} Hz, below its start at {start:R} Hz"),
            "correct start_hz and stop_hz; both are in Hz (400 MHz is 400e6)");
        return true;
    }

    /// <summary>Whether a stretch of frequencies has some in common with the band.</summary>
    public bool Meets(double start, double stop) =>
        stop >= Low * (1 - ShareOfFrequency) && start <= High * (1 + ShareOfFrequency);

    /// <summary>
    /// The power of ten that frequencies typed in another unit lack to meet the band, such as "e6"; null where none helps.
    /// </summary>
    public string? MissingPower(double start, double stop)
    {
        SharedBand band = this;
        return Meets(start, stop) || start == 0 ? null
            : OtherUnits.FirstOrDefault(u => band.Meets(start * u.Factor, stop * u.Factor)).Power;
    }
}
