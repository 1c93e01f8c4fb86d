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

        double total = 0;
        foreach (double weight in weights)
        {
            total += weight;
        }

        // A rounding error in the sum must not skip the value that just reaches the share.
        double enough = share * total * (1 - 1e-12);
        double[] parted = values.ToArray();
        int first = 0, last = parted.Length - 1;
        while (first < last)
        {
            int middle = (first + last) / 2;
            // What is left between the ends holds the values of their places, in any order.
            double up = WeightUpTo(Ascending.At(parted.AsSpan(first..(last + 1)), middle - first), values, weights);
            (first, last) = up > 0 && up >= enough ? (first, middle) : (middle + 1, last);
        }

        return parted[last];
    }

    private static double WeightUpTo(double value, ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        double sum = 0;
        for (int i = 0; i < values.Length; i++)
        {
            sum += values[i] <= value ? weights[i] : 0;
        }

        return sum;
    }
}
