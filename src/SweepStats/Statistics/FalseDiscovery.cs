namespace SweepStats.Statistics;

/// <summary>Many tests at once, of which a share of false alarms among the alarms is allowed.</summary>
public static class FalseDiscovery
{
    /// <summary>
    /// Adjusted p-values in the order given: the running minimum from above of p₍ᵢ₎·n/i over the sorted p-values, at most 1.
    /// </summary>
    /// <remarks>
    /// Reject where the adjusted value is at most the share. Holds for independent tests and for those that go up and down
    /// together, as neighbouring frequencies do. Source: Benjamini and Hochberg 1995, Journal of the Royal Statistical Society B
    /// 57, 289. Exact up to rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">A p-value is not between 0 and 1.</exception>
    public static double[] Adjusted(ReadOnlySpan<double> probabilities) => AdjustedProbabilities.Of(probabilities, sorted =>
    {
        double lowest = 1;
        for (int i = sorted.Length - 1; i >= 0; i--)
        {
            sorted[i] = lowest = Math.Min(lowest, sorted[i] * sorted.Length / (i + 1));
        }
    });
}
