namespace SweepStats.Statistics;

/// <summary>How many values of a sample, up to a number set beforehand, lie farther out than a normal sample allows.</summary>
/// <remarks>
/// The extreme studentised deviate is taken k times, each time without the value found before: Rᵢ = max|x − mean|/s,
/// dimensionless. The number of outliers is the largest i with Rᵢ &gt; λᵢ, so that outliers which hide each other (R₁ small, R₂
/// large) are still counted. Assumes independent values of one normal distribution apart from the outliers. The chance of any
/// false alarm is near the level for n ≥ 25 only; the paper vouches for n ≥ 15. Measured at 5 %: k = 1 keeps 5 % always; k = 2
/// gives 8.6, 6.7, 6.0, 5.5 % and k = 3 gives 13.5, 8.3, 6.6, 5.6 % for n = 6, 10, 15, 25 (fixtures/oracles/outliers.R). Source:
/// Rosner 1983, Technometrics 25, 165; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.3. Error: relative 1e-12.
/// </remarks>
internal sealed record GeneralisedEsd
{
    private GeneralisedEsd()
    {
    }

    /// <summary>R₁ to R_k; 0 where what is left has no scatter.</summary>
    public required IReadOnlyList<double> Statistics { get; init; }

    /// <summary>λ₁ to λ_k.</summary>
    public required IReadOnlyList<double> CriticalValues { get; init; }

    /// <summary>Places in the sample of the outliers, the farthest first; empty where there is none.</summary>
    public required IReadOnlyList<int> Outliers { get; init; }

    /// <summary>Looks for outliers.</summary>
    /// <param name="values">The sample, in any order.</param>
    /// <param name="most">Largest number of outliers looked for, k; at most n − 2.</param>
    /// <param name="level">Chance of any false alarm, for example 0.05.</param>
    /// <exception cref="ArgumentException">Fewer than three values, or one that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// k is not between 1 and n − 2, or the level is not between 0 and 1.
    /// </exception>
    public static GeneralisedEsd Of(ReadOnlySpan<double> values, int most, double level)
    {
        FiniteValues.Require(values, 3, nameof(values));
        FiniteValues.RequireLevel(level);
        if (most < 1 || most > values.Length - 2)
        {
            throw new ArgumentOutOfRangeException(nameof(most), most,
                $"Of {values.Length} values 1 to {values.Length - 2} may be outliers.");
        }

        var left = new List<double>(values.ToArray());
        var places = new List<int>(Enumerable.Range(0, values.Length));
        var statistics = new double[most];
        var critical = new double[most];
        var found = new int[most];
        int outliers = 0;
        for (int i = 0; i < most; i++)
        {
            critical[i] = Grubbs.CriticalValue(left.Count, level);
            (int at, statistics[i]) = Farthest([.. left]);
            found[i] = places[at];
            left.RemoveAt(at);
            places.RemoveAt(at);
            outliers = statistics[i] > critical[i] ? i + 1 : outliers;
        }

        return new GeneralisedEsd { Statistics = statistics, CriticalValues = critical, Outliers = found[..outliers] };
    }

    private static (int At, double Deviate) Farthest(ReadOnlySpan<double> values)
    {
        double[] deviations = Deviations.FromMean(values);
        int at = Grubbs.Outermost(deviations, OutlierSide.Either);
        double squares = Deviations.Product(deviations, deviations);
        return (at, squares > 0 ? Math.Abs(deviations[at]) / Math.Sqrt(squares / (values.Length - 1)) : 0);
    }
}
