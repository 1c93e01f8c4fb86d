namespace SweepStats.Statistics;

/// <summary>p-values of many tests, sorted, adjusted and put back in the order given.</summary>
internal static class AdjustedProbabilities
{
    /// <summary>Adjusted p-values in the order given.</summary>
    /// <param name="probabilities">As the tests gave them.</param>
    /// <param name="adjust">Turns sorted p-values into adjusted ones, in place.</param>
    /// <exception cref="ArgumentException">A p-value is not between 0 and 1.</exception>
    public static double[] Of(ReadOnlySpan<double> probabilities, Action<double[]> adjust)
    {
        double[] sorted = probabilities.ToArray();
        var order = new int[sorted.Length];
        for (int i = 0; i < sorted.Length; i++)
        {
            if (!(sorted[i] >= 0 && sorted[i] <= 1))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"A p-value lies between 0 and 1; number {i} is {sorted[i]}."), nameof(probabilities));
            }

            order[i] = i;
        }

        Array.Sort(sorted, order);
        adjust(sorted);
        Array.Sort(order, sorted);
        return sorted;
    }
}
