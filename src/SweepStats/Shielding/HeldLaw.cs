using SweepStats.Floor;

namespace SweepStats.Shielding;

/// <summary>An end of what readings of a kept look leave possible: the least shielding, or the most.</summary>
/// <remarks>
/// Nobody knows how the noise stood to the signal in the look that was kept; known is between which limits the signal lies (<see
/// cref="HeldNoise"/>). The shielding is least where the reference signal is as weak and the covered one as strong as their
/// readings allow, and most the other way round.
/// </remarks>
/// <param name="noise">Noise of a kept look.</param>
/// <param name="most">The end of the most shielding.</param>
internal sealed class HeldLaw(DetectorNoise noise, bool most) : ILevelLaw
{
    /// <inheritdoc/>
    public double Reference(double reading, double floor) =>
        most ? Strongest(reading, floor) : SignalInNoise.Level(reading, floor, noise);

    /// <inheritdoc/>
    public double Covered(double reading, double floor) =>
        most ? SignalInNoise.Level(reading, floor, noise) : Strongest(reading, floor);

    private double Strongest(double reading, double floor) =>
        floor - noise.LogMeanOffset + noise.StrongestSnrInDecibels(reading - floor);
}
