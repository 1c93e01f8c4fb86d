using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A floor lower than the noise of any room-temperature input.</summary>
internal sealed class BelowThermal : ICheck
{
    // Noise bandwidth and calibration leave a decibel or two of doubt.
    private const double AllowedDb = 2;

    /// <inheritdoc/>
    public string Code => "below-thermal";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen) ?? Lacking.Milliwatts(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { } floor || ThermalLimit.Of(seen) is not { } limit || WrongUnit.IsTooLow(SweepRole.Floor, seen))
        {
            yield break;
        }

        // As it was measured, not as it was moved to the bandwidth of the covered sweeps.
        double lowest = floor.LevelDb.Min() - floor.BandwidthShiftDb - floor.Noise.Min(n => n.LogMeanOffset);
        double below = limit.LevelDbm - lowest;
        if (below > AllowedDb)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Size = new Decibels(below),
                Message = string.Create(Amount.Print, $"The floor goes down to {lowest:0.0} dBm, {below:0.0} dB below "
                    + $"{limit.Told}: an average of noise at room temperature cannot lie so low."),
                Basis = string.Create(Amount.Print, $"k·T·B for "
                    + $"{(limit.IsStated ? "the stated bandwidth" : "1 Hz, since no single bandwidth is stated")}; "
                    + $"{AllowedDb:0} dB are allowed for noise bandwidth and calibration."),
                NextStep = "Look at the unit of the levels, the stated resolution bandwidth, and whether the gain of a "
                    + "preamplifier was taken off the levels.",
            };
        }
    }
}
