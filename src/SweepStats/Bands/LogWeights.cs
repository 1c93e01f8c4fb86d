using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>Weights that make a mean over points a mean over log frequency: each point stands for the stretch up to halfway to its neighbours.</summary>
internal static class LogWeights
{
    /// <summary>Weights of the points within a band, as if they were a grid of their own; 0 outside, and everywhere where none lies within.</summary>
    public static double[] Within(FrequencyGrid grid, FrequencyBand band) => Among(grid, f => band.Contains(grid[f]));

    /// <summary>Weights of some points, as if they were a grid of their own; 0 for the others.</summary>
    public static double[] Among(FrequencyGrid grid, Func<int, bool> counts)
    {
        int[] points = [.. Enumerable.Range(0, grid.Count).Where(counts)];
        var weights = new double[grid.Count];
        if (points.Length > 0)
        {
            double[] own = Of(new FrequencyGrid([.. points.Select(f => grid.Hertz[f])]));
            for (int i = 0; i < points.Length; i++)
            {
                weights[points[i]] = own[i];
            }
        }

        return weights;
    }

    /// <summary>Weighted sum over the points that count: what a point of weight 0 holds does not matter.</summary>
    public static double Mean(double[] weights, Func<int, double> value)
    {
        double sum = 0;
        for (int f = 0; f < weights.Length; f++)
        {
            sum += weights[f] > 0 ? weights[f] * value(f) : 0;
        }

        return sum;
    }

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
