namespace SweepStats.Statistics;

/// <summary>Whether the value farthest from the mean of a sample lies farther than a normal sample allows.</summary>
/// <remarks>
/// Formula: G = max|x − mean|/s, dimensionless; for one side max(x) − mean or mean − min(x) instead. Assumes independent values
/// of one normal distribution and at most one outlier: two close together hide each other, which is what
/// <see cref="GeneralisedEsd"/> is for. Source: Grubbs 1969, Technometrics 11, 1 (from memory); NIST/SEMATECH e-Handbook of
/// Statistical Methods, 1.3.5.17.1.
/// </remarks>
internal sealed record Grubbs
{
    private Grubbs()
    {
    }

    /// <summary>The value tested: its place in the sample, the first of several equally far.</summary>
    public required int Index { get; init; }

    /// <summary>G; 0 where the values have no scatter.</summary>
    public required double Statistic { get; init; }

    /// <summary>
    /// Probability of a G at least as large without an outlier, bounded above by the sum over the values, at most 1.
    /// </summary>
    /// <remarks>
    /// n·P(T &gt; t) with n − 2 degrees of freedom, twice that for both sides. The bound is exact for small probabilities of
    /// small samples, where two values cannot both lie that far out. Error: relative 1e-10; the share of the squares that the
    /// value leaves behind is summed without it, not subtracted.
    /// </remarks>
    public required double Probability { get; init; }

    /// <summary>Tests the outermost value.</summary>
    /// <exception cref="ArgumentException">Fewer than three values, or one that is not finite.</exception>
    public static Grubbs Of(ReadOnlySpan<double> values, OutlierSide side = OutlierSide.Either)
    {
        FiniteValues.Require(values, 3, nameof(values));
        double[] deviations = Deviations.FromMean(values);
        int index = Outermost(deviations, side);
        double squares = Deviations.Product(deviations, deviations);
        if (squares == 0)
        {
            return new Grubbs { Index = index, Statistic = 0, Probability = 1 };
        }

        int dof = values.Length - 2;
        // Grubbs's ratio S²(without)/S² is 1 − nG²/(n − 1)² and, in terms of t, ν/(ν + t²).
        double left = Math.Min(1, SquaresWithout(values, index) / squares);
        double t = Math.Sqrt(dof * (1 - left) / left);
        double sides = side == OutlierSide.Either ? 2 : 1;
        return new Grubbs
        {
            Index = index,
            Statistic = Math.Abs(deviations[index]) / Math.Sqrt(squares / (values.Length - 1)),
            Probability = Math.Min(1, sides * values.Length * StudentT.UpperTail(t, dof)),
        };
    }

    /// <summary>The G that is exceeded with a chance of at most <paramref name="level"/> without an outlier.</summary>
    /// <remarks>
    /// Formula: (n − 1)/√n · √(t²/(n − 2 + t²)), t the upper quantile to level/n (one side) or level/2n (both) with n − 2 degrees
    /// of freedom. Error: relative 1e-12.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three values, or a level that is not between 0 and 1.</exception>
    public static double CriticalValue(int count, double level, OutlierSide side = OutlierSide.Either)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        FiniteValues.RequireLevel(level);
        double t = StudentT.Quantile(level / (side == OutlierSide.Either ? 2.0 * count : count), count - 2);
        return (count - 1) * Math.Sqrt(t * t / (count - 2 + (t * t)) / count);
    }

    /// <summary>Place of the value farthest from the mean on the side asked for; the first of several.</summary>
    internal static int Outermost(ReadOnlySpan<double> deviations, OutlierSide side)
    {
        int index = 0;
        double farthest = double.NegativeInfinity;
        for (int i = 0; i < deviations.Length; i++)
        {
            double away = side switch
            {
                OutlierSide.High => deviations[i],
                OutlierSide.Low => -deviations[i],
                _ => Math.Abs(deviations[i]),
            };
            if (away > farthest)
            {
                (index, farthest) = (i, away);
            }
        }

        return index;
    }

    private static double SquaresWithout(ReadOnlySpan<double> values, int index)
    {
        double[] rest = Deviations.FromMean([.. values[..index], .. values[(index + 1)..]]);
        return Deviations.Product(rest, rest);
    }
}
