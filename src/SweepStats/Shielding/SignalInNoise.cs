using SweepStats.Floor;

namespace SweepStats.Shielding;

/// <summary>The level of a signal from the log means of its reading and of the floor.</summary>
/// <remarks>
/// Formula: h(c, f) = f − K(ψ(M) − ln M) + 10·log10 g⁻¹(c − f), with g the rise curve of <see cref="DetectorNoise"/>. Units: dB
/// on the scale of the readings. Assumes a steady signal in Gaussian noise, floor and reading with the same receiver settings. −∞
/// where the reading does not rise over the floor: the signal may be absent.
/// </remarks>
internal static class SignalInNoise
{
    /// <summary>Level of the signal in dB from the log means of reading and floor; −∞ where it may be absent.</summary>
    public static double Level(double reading, double floor, DetectorNoise noise) =>
        AtRise(reading - floor, floor, noise);

    /// <summary>The same from the rise of the reading over the floor in dB.</summary>
    public static double AtRise(double rise, double floor, DetectorNoise noise) =>
        floor - noise.LogMeanOffset + noise.SnrInDecibels(rise);

    /// <summary>Rise in dB below which the slope grows without bound and says nothing about the interval any more.</summary>
    public const double LeastRiseDb = 0.05;

    /// <summary>∂h/∂c at a rise; at least 1, since noise shrinks what the reading shows of the signal.</summary>
    public static double Slope(double rise, DetectorNoise noise)
    {
        double over = Math.Max(rise - noise.LeastRiseDb, LeastRiseDb);
        double at = noise.LeastRiseDb + over;
        double step = Math.Min(0.01, over / 8);
        return (noise.SnrInDecibels(at + step) - noise.SnrInDecibels(at - step)) / (2 * step);
    }

    /// <summary>
    /// How far scatter of the signal raises the log mean of its reading at a rise, in dB: half the curvature of the noise curve
    /// times the variance.
    /// </summary>
    /// <remarks>
    /// Noise flattens the curve below and leaves it straight above, so that a scattered signal reads too high, most at 0 dB over
    /// the noise.
    /// </remarks>
    public static double ScatterBias(double rise, double signalDeviation, DetectorNoise noise)
    {
        // Within 0.1 dB of the floor, or 20 dB over it, there is nothing to take out.
        if (signalDeviation == 0 || rise < 0.1 || rise > 20)
        {
            return 0;
        }

        double step = Math.Min(0.1, rise / 8);
        double below = noise.SnrInDecibels(rise - step), at = noise.SnrInDecibels(rise), above = noise.SnrInDecibels(rise + step);
        double slope = (above - below) / (2 * step);
        double curvature = (above - (2 * at) + below) / (step * step);
        // For the inverse function x(r): r'' = −x''/x'³.
        return -curvature / (slope * slope * slope) / 2 * signalDeviation * signalDeviation;
    }
}
