using MathNet.Numerics.Distributions;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>Finds frequencies where the floor holds more than noise.</summary>
internal static class AmbientSearch
{
    // Chance of one false alarm in a whole clean floor, shared by the two tests and all frequencies.
    private const double FalseAlarm = 0.005;
    private const int HalfWidth = 15;

    // A slow ripple of the floor is no transmitter, however many sweeps resolve it.
    private const double LeastExcessDb = 1;

    /// <summary>Marks frequencies that stand above their neighbourhood (steady) or scatter more than noise does (intermittent).</summary>
    /// <param name="scatter">The floor readings, split.</param>
    /// <param name="noise">How noise alone reads.</param>
    /// <param name="sweeps">Number of floor sweeps.</param>
    public static bool[] Mark(FloorScatter scatter, DetectorNoise noise, int sweeps)
    {
        double[] mean = scatter.Mean;
        double[] baseline = RunningMedian.Of(mean, HalfWidth);
        // The median of skewed means lies beside their expectation.
        double skew = noise.CriticalRise(sweeps, 0.5);
        double share = FalseAlarm / 2 / mean.Length;
        double steady = Math.Max(LeastExcessDb, noise.CriticalRise(sweeps, 1 - share) * Math.Sqrt(1 + (1.6 / Math.Min(mean.Length, (2 * HalfWidth) + 1))));
        double unstable = noise.LogStandardDeviation * noise.LogStandardDeviation * VarianceRatio(noise, sweeps, share);
        var marks = new bool[mean.Length];
        for (int f = 0; f < mean.Length; f++)
        {
            marks[f] = mean[f] - baseline[f] + skew > steady || (sweeps > 1 && scatter.VarianceAt(f) > unstable);
        }

        return marks;
    }

    // A sample variance is nearly a gamma variable; skewed log readings widen it by their excess: var(s²)/σ⁴ = 2/(n−1) + γ₂/n.
    private static double VarianceRatio(DetectorNoise noise, int sweeps, double probability)
    {
        if (sweeps == 1)
        {
            return double.PositiveInfinity;
        }

        double relative = (2.0 / (sweeps - 1)) + (noise.ExcessKurtosis / sweeps);
        return Gamma.InvCDF(1 / relative, 1 / relative, 1 - probability);
    }
}
