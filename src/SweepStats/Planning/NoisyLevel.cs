using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>How readings of a steady signal in noise scatter on the dB scale.</summary>
/// <remarks>
/// The power of M looks at a signal γ times the noise is noncentral gamma: a gamma of shape M + J over M, with J from Poisson's
/// distribution of mean Mγ.
/// </remarks>
internal static class NoisyLevel
{
    // Past so many looks times signal-to-noise ratio a reading is normal, with the variance below.
    private const double NormalFrom = 1e4;

    // A mean of so many dB values is as good as normal; further ones only narrow it.
    private const int MostDrawn = 20;

    /// <summary>Variance in dB² of one reading of a signal well over the noise, or of noise alone.</summary>
    /// <remarks>
    /// By the gamma that has the same mean and variance of power, of shape M(1 + γ)²/(1 + 2γ). Source: Patnaik 1949, Biometrika
    /// 36, 202 (from memory). From 15 dB over the noise it is right to 2 %; near 0 dB and for few looks it is too small, since
    /// there a reading can fall far.
    /// </remarks>
    public static double Variance(DetectorNoise noise, double snrDb)
    {
        const double K = DetectorNoise.DecibelsPerNeper;
        double snr = Math.Pow(10, Math.Min(snrDb, 100) / 10);
        double shape = noise.Looks * (1 + snr) * (1 + snr) / (1 + (2 * snr));
        return double.IsPositiveInfinity(shape) ? 0 : K * K * GammaFunctions.Polygamma(1, shape) / noise.LogAverages;
    }

    /// <summary>Draws one reading in dB over the log mean of noise alone.</summary>
    public static double Sample(DetectorNoise noise, double snrDb, MersenneTwister random)
    {
        double snr = Math.Pow(10, snrDb / 10);
        if (!(noise.Looks * Math.Max(snr, 1) < NormalFrom))
        {
            return noise.Rise(snr) + Normal.Sample(random, 0, Math.Sqrt(Variance(noise, snrDb)));
        }

        if (noise.LogAverages == 1)
        {
            return Look(noise, snr, random);
        }

        // Dividing the deviation of fewer values gives the mean of any number of them, whole or not, its variance.
        int drawn = (int)Math.Clamp(noise.LogAverages, 1, MostDrawn);
        double sum = 0;
        for (int i = 0; i < drawn; i++)
        {
            sum += Look(noise, snr, random);
        }

        double mean = noise.Rise(snr);
        return mean + (((sum / drawn) - mean) * Math.Sqrt(drawn / noise.LogAverages));
    }

    private static double Look(DetectorNoise noise, double snr, MersenneTwister random)
    {
        double mean = noise.Looks * snr;
        double shape = noise.Looks + (mean > 0 ? Poisson.Sample(random, mean) : 0);
        return (10 * Math.Log10(Gamma.Sample(random, shape, 1) / noise.Looks)) - noise.LogMeanOffset;
    }
}
