using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Whether a series rises or falls, whatever the distribution of its values.</summary>
/// <remarks>
/// Formula: S = Σ sign(xⱼ − xᵢ) over i before j, dimensionless. Assumes independent values; neighbours that resemble each other
/// look like a trend. Without ties and up to <see cref="KendallTail.MostValues"/> values the probabilities are exact; otherwise
/// normal with a continuity correction of one, which is rough for fewer than ten values with ties. Values count as tied only
/// where they are equal: round them first to what they resolve. Source: Mann 1945, Econometrica 13, 245 (from memory); US EPA,
/// Unified Guidance 2009, section 17.3. Takes n²/2 steps.
/// </remarks>
internal sealed record MannKendall
{
    private MannKendall()
    {
    }

    /// <summary>Rises minus falls over all pairs.</summary>
    public required long S { get; init; }

    /// <summary>
    /// Variance of S without a trend: [n(n − 1)(2n + 5) − Σt(t − 1)(2t + 5)]/18, t the size of each group of ties.
    /// </summary>
    public required double Variance { get; init; }

    /// <summary>Whether the probabilities are exact.</summary>
    public required bool IsExact { get; init; }

    /// <summary>Probability of at least this S without a trend: small where the series rises.</summary>
    public required double RisingProbability { get; init; }

    /// <summary>Probability of at most this S without a trend: small where the series falls.</summary>
    public required double FallingProbability { get; init; }

    /// <summary>Probability of a trend at least as clear, up or down: twice the smaller, at most 1.</summary>
    public double Probability => Math.Min(1, 2 * Math.Min(RisingProbability, FallingProbability));

    /// <summary>Normal score with continuity correction, (S − sign S)/√variance; 0 where all values are equal.</summary>
    public double Score => S == 0 ? 0 : (S - Math.Sign(S)) / Math.Sqrt(Variance);

    /// <summary>Tests a series.</summary>
    /// <param name="values">In the order in which they were taken.</param>
    /// <exception cref="ArgumentException">Fewer than three values, or one that is not finite.</exception>
    public static MannKendall Of(ReadOnlySpan<double> values)
    {
        FiniteValues.Require(values, 3, nameof(values));
        long s = Rises(values);
        double variance = VarianceOf(values, out bool tied);
        bool exact = !tied && values.Length <= KendallTail.MostValues;
        return new MannKendall
        {
            S = s,
            Variance = variance,
            IsExact = exact,
            RisingProbability = exact ? KendallTail.Upper(values.Length, s) : NormalTail(s, variance),
            FallingProbability = exact ? KendallTail.Upper(values.Length, -s) : NormalTail(-s, variance),
        };
    }

    /// <summary>Variance of S without a trend, and whether any values are equal.</summary>
    internal static double VarianceOf(ReadOnlySpan<double> values, out bool tied)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        double ties = 0;
        int start = 0;
        for (int i = 1; i <= sorted.Length; i++)
        {
            if (i == sorted.Length || sorted[i] != sorted[start])
            {
                ties += Weight(i - start);
                start = i;
            }
        }

        tied = ties > 0;
        return (Weight(sorted.Length) - ties) / 18;
    }

    private static double Weight(double n) => n * (n - 1) * ((2 * n) + 5);

    private static long Rises(ReadOnlySpan<double> values)
    {
        long s = 0;
        for (int j = 1; j < values.Length; j++)
        {
            for (int i = 0; i < j; i++)
            {
                s += values[j].CompareTo(values[i]);
            }
        }

        return s;
    }

    private static double NormalTail(long s, double variance) =>
        variance > 0 ? Normal.CDF(0, 1, -(s - 1) / Math.Sqrt(variance)) : 1;
}
