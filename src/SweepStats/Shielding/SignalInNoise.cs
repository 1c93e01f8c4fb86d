using SweepStats.Floor;

namespace SweepStats.Shielding;

/// <summary>The level of a signal from the log means of its reading and of the floor.</summary>
/// <remarks>
/// Formula: h(c, f) = f − K(ψ(M) − ln M) + 10·log10 g⁻¹(c − f), with g the rise curve of <see cref="DetectorNoise"/>.
/// Units: dB on the scale of the readings. Assumes a steady signal in Gaussian noise, floor and reading with the same receiver settings.
/// −∞ where the reading does not rise over the floor: the signal may be absent.
/// </remarks>
internal static class SignalInNoise
{
    public static double Level(double reading, double floor, DetectorNoise noise) =>
        AtRise(reading - floor, floor, noise);

    public static double AtRise(double rise, double floor, DetectorNoise noise) =>
        floor - noise.LogMeanOffset + noise.SnrInDecibels(rise);

    /// <summary>∂h/∂c at a rise; at least 1, since noise shrinks what the reading shows of the signal.</summary>
    public static double Slope(double rise, DetectorNoise noise)
    {
        // Below a rise of 0.05 dB the slope grows without bound and says nothing about the interval any more.
        double at = Math.Max(rise, 0.05);
        double step = Math.Min(0.01, at / 8);
        return (noise.SnrInDecibels(at + step) - noise.SnrInDecibels(at - step)) / (2 * step);
    }
}
