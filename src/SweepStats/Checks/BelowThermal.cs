using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A floor lower than the noise of any room-temperature input.</summary>
internal sealed class BelowThermal : ICheck
{
    // Noise bandwidth and calibration leave a decibel or two of doubt.
    private const double AllowedDb = 2;

    // Where no bandwidth is stated: swept receivers have none narrower.
    private const double Narrowest = 1;

    public string Code => "below-thermal";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen) ?? Lacking.Milliwatts(seen);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { } floor || seen.Campaign.Scale != LevelScale.DecibelMilliwatts
            || (Bandwidth(seen) ?? Narrowest) is not (> 0 and var hertz))
        {
            yield break;
        }

        double limit = ThermalNoise.DbmPerHertz() + (10 * Math.Log10(hertz));
        double lowest = floor.LevelDb.Min() - floor.Noise.Min(n => n.LogMeanOffset);
        if (lowest < limit - AllowedDb)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Size = new Decibels(limit - lowest),
                Message = string.Create(Amount.Print, $"The floor goes down to {lowest:0.0} dBm, {limit - lowest:0.0} dB below "
                    + $"the thermal noise of a bandwidth of {hertz:0.###} Hz at 290 K ({limit:0.0} dBm): an average of noise at "
                    + $"room temperature cannot lie so low."),
                Basis = string.Create(Amount.Print, $"k·T·B for "
                    + $"{(Bandwidth(seen) is null ? "1 Hz, since no single bandwidth is stated" : "the stated bandwidth")}; "
                    + $"{AllowedDb:0} dB are allowed for noise bandwidth and calibration."),
                NextStep = "Look at the unit of the levels, the stated resolution bandwidth, and whether the gain of a "
                    + "preamplifier was taken off the levels.",
            };
        }
    }

    private static double? Bandwidth(Evidence seen)
    {
        var stated = (seen.Campaign.Floor?.Sweeps ?? []).Select(s => s.Settings.ResolutionBandwidthHz).Distinct().ToList();
        return stated is [{ } one] ? one : stated.Count > 1 ? null : seen.Setup.ResolutionBandwidthHz;
    }
}
