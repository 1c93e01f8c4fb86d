namespace SweepStats.Statistics;

/// <summary>Distances of values from their mean, as the tests of scatter need them.</summary>
internal static class Deviations
{
    /// <summary>x − mean, which add up to 0 but for their own rounding; exactly 0 where all values are equal.</summary>
    /// <remarks>
    /// In two passes: the mean may be off by a unit in the last place, and left in, that would look like scatter of readings
    /// which a display rounded to one level. Unit of the values. Error: a unit in the last place of the largest value. Source: as
    /// <see cref="Sample.StandardDeviation"/>.
    /// </remarks>
    /// <exception cref="ArgumentException">No values.</exception>
    public static double[] FromMean(ReadOnlySpan<double> values) => From(Sample.Mean(values), values);

    /// <summary>The same where the mean, as <see cref="Sample.Mean"/> has it, is known.</summary>
    public static double[] From(double mean, ReadOnlySpan<double> values)
    {
        double[] deviations = values.ToArray();
        Less(mean, deviations);

        // A few units in the last place at most, all alike where the values are: their mean is exact.
        Less(Sample.Mean(deviations), deviations);
        return deviations;
    }

    /// <summary>Takes a number off each, in place.</summary>
    public static void Less(double mean, Span<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            values[i] -= mean;
        }
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
