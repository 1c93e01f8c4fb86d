namespace SweepStats.Statistics;

/// <summary>Quantiles of weighted values.</summary>
public static class WeightedQuantile
{
    /// <summary>The smallest value at which the weights of all values up to it reach the share.</summary>
    /// <param name="values">Values in any order.</param>
    /// <param name="weights">Their weights, not negative, at least one positive.</param>
    /// <param name="share">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">Lengths differ or there are no values.</exception>
    public static double Of(ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double share)
    {
        if (values.Length == 0 || values.Length != weights.Length)
        {
            throw new ArgumentException("There must be one weight for each of at least one value.", nameof(weights));
        }

        double[] sorted = values.ToArray();
        double[] along = weights.ToArray();
        Array.Sort(sorted, along);
        double total = 0;
        foreach (double weight in along)
        {
            total += weight;
        }

        double sum = 0;
        for (int i = 0; i < sorted.Length; i++)
        {
            sum += along[i];
            // A rounding error in the sum must not skip the value that just reaches the share.
            if (along[i] > 0 && sum >= share * total * (1 - 1e-12))
            {
                return sorted[i];
            }
        }

        return sorted[^1];
    }
}
