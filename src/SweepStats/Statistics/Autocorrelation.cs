namespace SweepStats.Statistics;

/// <summary>How strongly neighbours in a series resemble each other.</summary>
public static class Autocorrelation
{
    /// <summary>Lag-1 coefficient: Σ(xᵢ − mean)(xᵢ₊₁ − mean) / Σ(xᵢ − mean)², between −1 and 1.</summary>
    /// <remarks>
    /// Dimensionless. Assumes equal steps and no trend. Biased towards 0 by about (1 + 3ρ)/n. Source: definition of the NIST StRD
    /// univariate sets, which are its check. Error: relative 1e-13 of the values as stored. A series without scatter has no
    /// coefficient: the result is not a number.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    public static double Lag1(ReadOnlySpan<double> values)
    {
        if (values.Length < 2)
        {
            throw new ArgumentException("At least two values are needed.", nameof(values));
        }

        double mean = Sample.Mean(values);
        var products = new CompensatedSum();
        var squares = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            double deviation = values[i] - mean;
            squares.Add(deviation * deviation);
            if (i > 0)
            {
                products.Add(deviation * (values[i - 1] - mean));
            }
        }

        return squares.Value > 0 ? products.Value / squares.Value : double.NaN;
    }
}
