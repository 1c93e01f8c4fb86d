namespace SweepStats.Statistics;

/// <summary>A confidence level between 0 and 1, both excluded; <c>default</c> is not a valid level.</summary>
public readonly record struct Confidence
{
    /// <summary>
    /// A probability so near one half that a limit differs from the estimate by 3e-9 standard uncertainties: the middle itself is
    /// no two-sided interval.
    /// </summary>
    internal const double NearlyEven = 0.5 + 1e-9;

    /// <summary>The level named in most laboratory reports: 95 %.</summary>
    public static Confidence NinetyFive { get; } = new(0.95);

    /// <summary>Creates a level.</summary>
    /// <param name="level">Share of intervals that are to hold the truth, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public Confidence(double level)
    {
        if (!(level > 0 && level < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level,
                "A confidence level lies between 0 and 1, for example 0.95.");
        }

        Level = level;
    }

    /// <summary>The level, for example 0.95.</summary>
    public double Level { get; }

    /// <summary>Probability below the upper end of a two-sided interval: 0.975 for 0.95.</summary>
    public double TwoSidedQuantile => 0.5 + (Level / 2);
}
