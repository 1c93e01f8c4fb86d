using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>Weights that make a mean over points a mean over log frequency: each point stands for the stretch up to halfway to its neighbours.</summary>
internal static class LogWeights
{
    /// <summary>Weights that sum to 1. A point at 0 Hz has no place on a log axis and weight 0, unless it is the only one.</summary>
    public static double[] Of(FrequencyGrid grid)
    {
        ReadOnlySpan<double> hertz = grid.Hertz;
        int first = hertz[0] == 0 && hertz.Length > 1 ? 1 : 0;
        var weights = new double[hertz.Length];
        if (hertz.Length - first == 1)
        {
            weights[first] = 1;
            return weights;
        }

        double whole = Math.Log(hertz[^1] / hertz[first]);
        for (int f = first; f < hertz.Length; f++)
        {
            double left = hertz[Math.Max(first, f - 1)];
            double right = hertz[Math.Min(hertz.Length - 1, f + 1)];
            weights[f] = Math.Log(right / left) / (2 * whole);
        }

        return weights;
    }
}
