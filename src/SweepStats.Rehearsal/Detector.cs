using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>Draws readings of a steady signal in Gaussian noise as a detector shows them.</summary>
/// <remarks>
/// Power averaging over M looks: M times the reading is half a noncentral chi-square variable with 2M degrees of freedom and
/// noncentrality 2Mγ, drawn as (Z + √(2Mγ))² plus a chi-square variable with 2M − 1. Log averaging: the mean of M single looks in
/// dB. Sample: one look. Peak and lowest: the highest and the lowest of M single looks at the same signal.
/// </remarks>
/// <param name="averaging">How looks are averaged; unknown draws as power does.</param>
/// <param name="looks">Looks in one reading, at least 1; whole for log averaging, and where one look is kept.</param>
public sealed class Detector(Averaging averaging, double looks)
{
    /// <summary>One reading in dB relative to the noise power.</summary>
    /// <param name="snr">Signal-to-noise power ratio, not negative.</param>
    /// <param name="random">Where the draw comes from.</param>
    public double Reading(double snr, RandomSource random)
    {
        switch (averaging)
        {
            case Averaging.Sample:
                return 10 * Math.Log10(Power(1, snr, random));
            case Averaging.Log:
                double sum = 0;
                for (int look = 0; look < looks; look++)
                {
                    sum += Math.Log(Power(1, snr, random));
                }

                return 10 / Math.Log(10) * sum / looks;
            case Averaging.Peak:
                return 10 * Math.Log10(Kept(snr, random, Math.Max));
            case Averaging.Lowest:
                return 10 * Math.Log10(Kept(snr, random, Math.Min));
            default:
                return 10 * Math.Log10(Power(looks, snr, random));
        }
    }

    private double Kept(double snr, RandomSource random, Func<double, double, double> better)
    {
        double kept = Power(1, snr, random);
        for (int look = 1; look < looks; look++)
        {
            kept = better(kept, Power(1, snr, random));
        }

        return kept;
    }

    private static double Power(double looks, double snr, RandomSource random)
    {
        double steady = random.Normal() + Math.Sqrt(2 * looks * snr);
        return ((steady * steady / 2) + random.Gamma(looks - 0.5)) / looks;
    }
}
