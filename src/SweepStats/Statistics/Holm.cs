namespace SweepStats.Statistics;

/// <summary>Several tests at once: p-values adjusted so that the chance of even one false alarm stays below the level.</summary>
public static class Holm
{
    /// <summary>
    /// Adjusted p-values in the order given: the running maximum of (n − i + 1)·p₍ᵢ₎ over the sorted p-values, at most 1.
    /// </summary>
    /// <remarks>
    /// Reject where the adjusted value is at most the level. Holds for any dependence between the tests. Never weaker than
    /// Bonferroni's n·p. Source: Holm 1979, Scandinavian Journal of Statistics 6, 65 (from memory). Exact up to rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">A p-value is not between 0 and 1.</exception>
    public static double[] Adjusted(ReadOnlySpan<double> probabilities) => AdjustedProbabilities.Of(probabilities, sorted =>
    {
        double highest = 0;
        for (int i = 0; i < sorted.Length; i++)
        {
            sorted[i] = highest = Math.Max(highest, Math.Min(1, (sorted.Length - i) * sorted[i]));
        }
    });
}
