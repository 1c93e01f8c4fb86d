namespace SweepStats.Statistics;

/// <summary>Mean, standard deviation and quantiles of a sample, to the digits that its values have.</summary>
/// <remarks>
/// Results carry the unit of the values. Values are to be finite: one that is not makes a mean or deviation not a number.
/// Error: checked against the certified values of the NIST StRD univariate sets (fixtures/published/nist-strd-univariate).
/// </remarks>
public static class Sample
{
    /// <summary>Arithmetic mean, Σx/n. Error: one unit in the last place, by compensated summation.</summary>
    /// <exception cref="ArgumentException">No values.</exception>
    public static double Mean(ReadOnlySpan<double> values)
    {
        RequireCount(values, 1);
        var sum = new CompensatedSum();
        foreach (double value in values)
        {
            sum.Add(value);
        }

        return sum.Value / values.Length;
    }

    /// <summary>Standard deviation with n − 1: √(Σ(x − mean)²/(n − 1)).</summary>
    /// <remarks>
    /// Two passes; the mean's own rounding is taken out by the sum of deviations. Error: relative 1e-15 of the values as stored;
    /// where they lie far from zero, storing them costs more. Source: Chan, Golub and LeVeque 1983, The American Statistician 37,
    /// 242, equation (1.7) (from memory).
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    public static double StandardDeviation(ReadOnlySpan<double> values)
    {
        RequireCount(values, 2);
        return Math.Sqrt(SquaredDeviations(values, Mean(values)) / (values.Length - 1));
    }

    /// <summary>
    /// The value below which a share of the sample lies, interpolated between neighbours: sorted place p·(n − 1).
    /// </summary>
    /// <remarks>
    /// Source: Hyndman and Fan 1996, The American Statistician 50, 361, type 7 (from memory); the default of R. For weighted
    /// values: <see cref="WeightedQuantile"/>.
    /// </remarks>
    /// <param name="values">The sample, in any order; it is left as it is.</param>
    /// <param name="share">Between 0 and 1, both included.</param>
    /// <exception cref="ArgumentException">No values, or one that is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1.</exception>
    public static double Quantile(ReadOnlySpan<double> values, double share)
    {
        RequireCount(values, 1);
        RequireShare(share);
        double[] parted = values.ToArray();
        RequireNumbers(parted);
        double place = share * (parted.Length - 1);
        int left = Math.Min((int)place, parted.Length - 1);
        return Between(parted, left, place - left);
    }

    /// <summary>The middle value; between the two middle values of an even sample.</summary>
    /// <exception cref="ArgumentException">No values, or one that is not a number.</exception>
    public static double Median(ReadOnlySpan<double> values) => Quantile(values, 0.5);

    /// <summary>Σ(x − mean)² about the true mean, given it to within its rounding.</summary>
    internal static double SquaredDeviations(ReadOnlySpan<double> values, double mean)
    {
        var squares = new CompensatedSum();
        var rest = new CompensatedSum();
        foreach (double value in values)
        {
            double deviation = value - mean;
            squares.Add(deviation * deviation);
            rest.Add(deviation);
        }

        return Math.Max(0, squares.Value - (rest.Value * rest.Value / values.Length));
    }

    // No more than the two neighbours of the place have to be known.
    private static double Between(double[] values, int left, double part)
    {
        double low = Ascending.At(values, left);
        if (part <= 0 || left + 1 >= values.Length)
        {
            return low;
        }

        // Equal neighbours, infinite ones too, need no interpolation.
        double high = Extremes.Of(values.AsSpan(left + 1)).Lowest;
        return low == high ? low : low + (part * (high - low));
    }

    private static void RequireCount(ReadOnlySpan<double> values, int count)
    {
        if (values.Length < count)
        {
            throw new ArgumentException(count == 1 ? "At least one value is needed." : $"At least {count} values are needed.",
                nameof(values));
        }
    }

    private static void RequireNumbers(double[] values)
    {
        int at = Array.FindIndex(values, double.IsNaN);
        if (at >= 0)
        {
            throw new ArgumentException($"Value {at} is not a number and has no place in an order.", nameof(values));
        }
    }

    private static void RequireShare(double share)
    {
        if (!(share >= 0 && share <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1.");
        }
    }
}
