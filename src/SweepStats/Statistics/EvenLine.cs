namespace SweepStats.Statistics;

/// <summary>
/// Straight line of least squares through values at even steps: slope Σ(i − ī)y/(m(m² − 1)/12) about the mean. Immutable.
/// </summary>
/// <remarks>
/// Plain sums, counted from the first value, so that of equal values exactly nothing is left: off by some 1e-16·m of the values'
/// distances from it. Unit of the values; <see cref="RegressionLine"/> has limits too, and any steps.
/// </remarks>
/// <param name="Middle">Its value halfway, at place (m − 1)/2: the mean.</param>
/// <param name="Slope">Rise a step; 0 of a single value.</param>
/// <param name="Count">m.</param>
internal readonly record struct EvenLine(double Middle, double Slope, int Count)
{
    /// <param name="values">At least one.</param>
    public static EvenLine Of(ReadOnlySpan<double> values)
    {
        double count = values.Length, middle = (count - 1) / 2, origin = values[0];
        double sum = 0, turned = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double value = values[i] - origin;
            sum += value;
            turned += (i - middle) * value;
        }

        return new EvenLine(origin + (sum / count), values.Length < 2 ? 0 : turned / (count * ((count * count) - 1) / 12),
            values.Length);
    }

    /// <summary>The line at a place, from 0.</summary>
    public double At(int place) => Middle + (Slope * (place - ((Count - 1) / 2.0)));

    /// <summary>What values lie above it.</summary>
    public double[] Residuals(ReadOnlySpan<double> values)
    {
        double[] left = values.ToArray();
        for (int i = 0; i < left.Length; i++)
        {
            left[i] -= At(i);
        }

        return left;
    }
}
