namespace SweepStats.Statistics;

/// <summary>Distances of values from their mean, as the tests of scatter need them.</summary>
internal static class Deviations
{
    /// <summary>x − mean, which add up to 0 but for their own rounding; exactly 0 where all values are equal.</summary>
    /// <remarks>
    /// The mean of equal values may be off by a unit in the last place. Left in, that looks like scatter, and readings that a display rounded to one level
    /// would have outliers and trends. Unit of the values. Error: a unit in the last place of the largest value.
    /// </remarks>
    /// <exception cref="ArgumentException">No values.</exception>
    public static double[] FromMean(ReadOnlySpan<double> values)
    {
        double[] deviations = values.ToArray();
        if (values.Length > 0 && values.IndexOfAnyExcept(values[0]) < 0)
        {
            Array.Clear(deviations);
            return deviations;
        }

        double mean = Sample.Mean(values);
        for (int i = 0; i < deviations.Length; i++)
        {
            deviations[i] -= mean;
        }

        // What is left of the mean's own rounding matters where values lie far from zero.
        double rest = Sample.Mean(deviations);
        for (int i = 0; i < deviations.Length; i++)
        {
            deviations[i] -= rest;
        }

        return deviations;
    }

    /// <summary>Sum of the products of two rows of the same length.</summary>
    public static double Product(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = new CompensatedSum();
        for (int i = 0; i < a.Length; i++)
        {
            sum.Add(a[i] * b[i]);
        }

        return sum.Value;
    }
}
