using SweepStats.Floor;

namespace SweepStats.Shielding;

/// <summary>The law of readings that are averages: reference and covered are both taken out of the noise by its curve.</summary>
/// <param name="noise">The detector's noise.</param>
internal sealed class AveragedLaw(DetectorNoise noise) : ILevelLaw
{
    /// <inheritdoc/>
    public double Reference(double reading, double floor) => SignalInNoise.Level(reading, floor, noise);

    /// <inheritdoc/>
    public double Covered(double reading, double floor) => SignalInNoise.Level(reading, floor, noise);
}
