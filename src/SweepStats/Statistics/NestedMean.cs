namespace SweepStats.Statistics;

/// <summary>Mean of nested groups under given variances: generalised least squares, group by group from the inside.</summary>
internal static class NestedMean
{
    /// <summary>Mean and standard error in the unit of the values; the error is 0 where all variances are.</summary>
    public static (double Mean, double StandardError) Of(NestedValues values, Nesting nesting, NestedVariances found)
    {
        (double[] variances, double residual) = found;
        if (residual == 0 && variances.AsSpan().IndexOfAnyExcept(0) < 0)
        {
            return (values.Centre + values.Means[0], 0);
        }

        // Any scale does: relative to the residual, or to 1 where nothing is left over.
        double unit = residual > 0 ? residual : 1e-12 * Largest(variances);
        double[] ratios = new double[variances.Length];
        for (int k = 0; k < ratios.Length; k++)
        {
            ratios[k] = variances[k] / unit;
        }

        NestedLikelihood at = new NestedData(values, nesting).At(ratios);
        return (at.Mean, Math.Sqrt(unit / at.Precision));
    }

    private static double Largest(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, value);
        }

        return largest;
    }
}
