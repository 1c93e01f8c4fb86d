using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>
/// Weights that make a mean over points a mean over log frequency: each point stands for the stretch up to halfway to its
/// neighbours.
/// </summary>
internal static class LogWeights
{
    /// <summary>
    /// Weights of the points within a band, as if they were a grid of their own; 0 outside, and everywhere where none lies
    /// within.
    /// </summary>
    public static double[] Within(FrequencyGrid grid, FrequencyBand band)
    {
        int[] points = [.. Enumerable.Range(0, grid.Count).Where(f => band.Contains(grid[f]))];
        var weights = new double[grid.Count];
        if (points.Length > 0)
        {
            Of(new FrequencyGrid([.. points.Select(f => grid.Hertz[f])])).CopyTo(weights, points[0]);
        }

        return weights;
    }

    /// <summary>
    /// Weights within a band of the points that count, which sum to 1: each keeps the stretch it stands for, and what is left out
    /// leaves a gap.
    /// </summary>
    public static double[] OfPart(FrequencyGrid grid, FrequencyBand band, Func<int, bool> counts) =>
        Whole([.. Within(grid, band).Select((w, f) => counts(f) ? w : 0)]);

    /// <summary>The same weights, made to sum to 1; all 0 where they are.</summary>
    public static double[] Whole(double[] weights)
    {
        double sum = weights.Sum();
        return sum > 0 ? [.. weights.Select(w => w / sum)] : weights;
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

    /// <summary>The same of values that are known.</summary>
    public static double Mean(ReadOnlySpan<double> weights, ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (int f = 0; f < weights.Length; f++)
        {
            sum += weights[f] > 0 ? weights[f] * values[f] : 0;
        }

        return sum;
    }

    /// <summary>
    /// Weights that sum to 1. A point at 0 Hz has no place on a log axis and weight 0, unless it is the only one.
    /// </summary>
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
