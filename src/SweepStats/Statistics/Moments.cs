namespace SweepStats.Statistics;

/// <summary>Third and fourth moment of a sample against its scatter.</summary>
internal static class Moments
{
    /// <summary>
    /// Skewness m₃/m₂^1.5 and excess m₄/m₂² − 3, with mₖ = Σ(x − mean)ᵏ/n. Dimensionless; both 0 for a normal variable.
    /// </summary>
    /// <remarks>
    /// Biased towards 0 in small samples; not a number where the values have no scatter. Source: Fisher 1930 in the form g₁, g₂
    /// (from memory). Error: relative 1e-12.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two values, or one that is not finite.</exception>
    public static (double Skewness, double Excess) SkewnessAndExcess(ReadOnlySpan<double> values)
    {
        FiniteValues.Require(values, 2, nameof(values));
        double[] deviations = Deviations.FromMean(values);
        var second = new CompensatedSum();
        var third = new CompensatedSum();
        var fourth = new CompensatedSum();
        foreach (double d in deviations)
        {
            second.Add(d * d);
            third.Add(d * d * d);
            fourth.Add(d * d * d * d);
        }

        double variance = second.Value / deviations.Length;
        return (third.Value / deviations.Length / Math.Pow(variance, 1.5),
            (fourth.Value / deviations.Length / (variance * variance)) - 3);
    }
}
