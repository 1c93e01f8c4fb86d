namespace SweepStats.Statistics;

/// <summary>Variances that the levels of nested groups add to a value. Immutable.</summary>
/// <remarks>Model: value = mean + one independent normal effect a level + a normal rest.</remarks>
public sealed record NestedComponents
{
    /// <summary>
    /// Variance of the effects of each level, outermost first, in the squared unit of the values; not negative.
    /// </summary>
    public required ImmutableArray<double> Variances { get; init; }

    /// <summary>Variance of the rest.</summary>
    public required double Residual { get; init; }

    /// <summary>Estimated mean over all that could have been drawn.</summary>
    public required double Mean { get; init; }

    /// <summary>Standard error of that mean.</summary>
    public required double StandardError { get; init; }

    /// <summary>Variance of a single value.</summary>
    public double Total => Residual + Variances.Sum();

    /// <summary>
    /// Share of the variance of a single value that two values of the same group of a level have in common: the intraclass
    /// correlation.
    /// </summary>
    /// <param name="level">Outermost is 0.</param>
    public double Intraclass(int level) => Variances.Take(level + 1).Sum() / Total;
}

/// <summary>Variances alone, where mean and standard error are not asked for.</summary>
/// <param name="Levels">Of each level, outermost first; not negative.</param>
/// <param name="Residual">Of the rest.</param>
internal readonly record struct NestedVariances(double[] Levels, double Residual);
