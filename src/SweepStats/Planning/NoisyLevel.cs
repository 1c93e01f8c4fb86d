using SweepStats.Floor;

namespace SweepStats.Planning;

/// <summary>How one reading of a steady signal in noise scatters on the dB scale.</summary>
/// <remarks>
/// The power of M looks at a signal γ times the noise is noncentral gamma, with mean 1 + γ and variance (1 + 2γ)/M; a gamma of shape
/// M(1 + γ)²/(1 + 2γ) has the same two moments, and is exact for noise alone and for a strong signal. Source: Patnaik 1949, Biometrika 36, 202 (from memory).
/// Error: see the tests, which hold it against drawn readings.
/// </remarks>
internal static class NoisyLevel
{
    /// <summary>Noise alone that scatters as this signal in noise does.</summary>
    public static DetectorNoise Like(DetectorNoise noise, double snrDb)
    {
        if (double.IsPositiveInfinity(noise.Looks))
        {
            return noise;
        }

        double snr = Math.Pow(10, Math.Min(snrDb, 100) / 10);
        double looks = noise.Looks * (1 + snr) * (1 + snr) / (1 + (2 * snr));
        return new DetectorNoise(looks, noise.LogAverages);
    }

    /// <summary>Variance of one reading in dB², from the shape above.</summary>
    public static double Variance(DetectorNoise noise, double snrDb)
    {
        double deviation = Like(noise, snrDb).LogStandardDeviation;
        return deviation * deviation;
    }
}
