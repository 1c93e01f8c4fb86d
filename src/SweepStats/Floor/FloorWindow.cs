namespace SweepStats.Floor;

/// <summary>Pools the floor over neighbouring frequencies as far as they agree.</summary>
/// <remarks>
/// Around each frequency the window doubles while its mean agrees with all narrower ones within their errors (intersection of confidence intervals;
/// Goldenshluger and Nemirovski 1997, from memory). On a flat floor that shrinks the error sixfold; at a step or a slope, where receivers switch ranges,
/// the window stays narrow instead of smearing the step over its neighbours.
/// </remarks>
internal static class FloorWindow
{
    // How far the true level may lie below a mean (two standard errors: wider ones smear steps over their neighbours) and above it. Log readings of few looks
    // fall 20 and 30 dB without any reason but chance; such a dip must not pass for a floor of its own.
    private const double ProbabilityBelow = 0.977;
    private const double ProbabilityAbove = 0.0005;

    // At the ends of the band a window would look to one side, which a slope biases: only the outermost point borrows from its one neighbour.
    private const int Overhang = 1;
    private static readonly int[] HalfWidths = [0, 1, 2, 4, 8, 16];

    /// <summary>Pooled level and number of frequencies behind it, for each frequency.</summary>
    /// <param name="mean">Log mean at each frequency in dB.</param>
    /// <param name="leftOut">Frequencies that keep their own level and serve no neighbour.</param>
    /// <param name="noise">How noise reads.</param>
    /// <param name="readings">Independent readings behind one mean and, for the correlation between neighbours, how many times fewer behind a pooled one.</param>
    public static (double[] Level, int[] Count) Pool(ReadOnlySpan<double> mean, ReadOnlySpan<bool> leftOut, DetectorNoise noise, (int One, double Fewer) readings)
    {
        (double[] sums, int[] counts) = Cumulate(mean, leftOut);
        (double Below, double Above)[] reach = Reach(noise, readings);
        var level = new double[mean.Length];
        var count = new int[mean.Length];
        for (int f = 0; f < mean.Length; f++)
        {
            (level[f], count[f]) = leftOut[f] ? (mean[f], 1) : Widest(f, sums, counts, reach);
        }

        return (level, count);
    }

    private static (double Level, int Count) Widest(int f, double[] sums, int[] counts, (double Below, double Above)[] reach)
    {
        (double Level, int Count) best = default;
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        foreach (int half in HalfWidths)
        {
            int last = sums.Length - 2;
            int reachable = Math.Min(half, Math.Max(Math.Min(f, last - f), Overhang));
            int start = Math.Max(0, f - reachable);
            int end = Math.Min(last, f + reachable) + 1;
            int count = counts[end] - counts[start];
            double level = (sums[end] - sums[start]) / count;
            low = Math.Max(low, level - reach[count].Below);
            high = Math.Min(high, level + reach[count].Above);
            if (low > high)
            {
                break;
            }

            best = (level, count);
        }

        return best;
    }

    // By number of frequencies in a window; a reach of 0 for none.
    private static (double Below, double Above)[] Reach(DetectorNoise noise, (int One, double Fewer) readings)
    {
        var reach = new (double Below, double Above)[(2 * HalfWidths[^1]) + 2];
        for (int count = 1; count < reach.Length; count++)
        {
            double independent = Math.Max(readings.One, readings.One * count / (count > 1 ? readings.Fewer : 1));
            reach[count] = (noise.CriticalRise(independent, ProbabilityBelow), -noise.CriticalRise(independent, ProbabilityAbove));
        }

        return reach;
    }

    private static (double[] Sums, int[] Counts) Cumulate(ReadOnlySpan<double> mean, ReadOnlySpan<bool> leftOut)
    {
        var sums = new double[mean.Length + 1];
        var counts = new int[mean.Length + 1];
        for (int f = 0; f < mean.Length; f++)
        {
            sums[f + 1] = sums[f] + (leftOut[f] ? 0 : mean[f]);
            counts[f + 1] = counts[f] + (leftOut[f] ? 0 : 1);
        }

        return (sums, counts);
    }
}
