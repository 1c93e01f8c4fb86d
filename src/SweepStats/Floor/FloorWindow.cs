namespace SweepStats.Floor;

/// <summary>Pools the floor over neighbouring frequencies as far as they agree.</summary>
/// <remarks>
/// Around each frequency the window doubles while its mean agrees with all narrower ones within their errors (intersection of confidence intervals;
/// Goldenshluger and Nemirovski 1997, from memory). On a flat floor that shrinks the error sixfold; at a step or a slope, where receivers switch ranges,
/// the window stays narrow instead of smearing the step over its neighbours.
/// </remarks>
internal static class FloorWindow
{
    // Wider intervals pool more and smear more: with 3 standard errors a step of 2 dB moved its neighbours by more than their errors.
    private const double Agreement = 2;

    // At the ends of the band a window would look to one side, which a slope biases: only the outermost point borrows from its one neighbour.
    private const int Overhang = 1;
    private static readonly int[] HalfWidths = [0, 1, 2, 4, 8, 16];

    /// <summary>Pooled level and number of frequencies behind it, for each frequency.</summary>
    /// <param name="mean">Log mean at each frequency in dB.</param>
    /// <param name="leftOut">Frequencies that keep their own level and serve no neighbour.</param>
    /// <param name="standardError">Standard error of one mean in dB.</param>
    /// <param name="inflation">Factor on the error of a pooled mean, for correlation between neighbours; at least 1.</param>
    public static (double[] Level, int[] Count) Pool(ReadOnlySpan<double> mean, ReadOnlySpan<bool> leftOut, double standardError, double inflation)
    {
        (double[] sums, int[] counts) = Cumulate(mean, leftOut);
        var level = new double[mean.Length];
        var count = new int[mean.Length];
        for (int f = 0; f < mean.Length; f++)
        {
            (level[f], count[f]) = leftOut[f] ? (mean[f], 1) : Widest(f, sums, counts, (standardError, inflation));
        }

        return (level, count);
    }

    private static (double Level, int Count) Widest(int f, double[] sums, int[] counts, (double One, double Inflation) error)
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
            double reach = Agreement * error.One * (count > 1 ? error.Inflation : 1) / Math.Sqrt(count);
            low = Math.Max(low, level - reach);
            high = Math.Min(high, level + reach);
            if (low > high)
            {
                break;
            }

            best = (level, count);
        }

        return best;
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
