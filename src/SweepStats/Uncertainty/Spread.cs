using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>How an error may lie about zero: symmetric, in the unit of its quantity. Immutable.</summary>
/// <remarks>Sources of the divisors: JCGM 100:2008, 4.3; of the draws: JCGM 101:2008, 6.4.</remarks>
public abstract record Spread
{
    private protected Spread()
    {
    }

    /// <summary>
    /// Standard uncertainty; for Student's t the scale, as JCGM 100 reckons with it, not the larger standard deviation.
    /// </summary>
    public abstract double StandardUncertainty { get; }

    /// <summary>Degrees of freedom of the standard uncertainty; infinite where it is known.</summary>
    public virtual double DegreesOfFreedom => double.PositiveInfinity;

    /// <summary>Farthest possible error; infinite where there is no limit.</summary>
    public abstract double Limit { get; }

    /// <summary>Probability of an error below a value.</summary>
    public abstract double Below(double error);

    /// <summary>Draws an error.</summary>
    public abstract double Draw(RandomSource random);

    /// <summary>Refuses a width that is negative or not finite.</summary>
    private protected static double Width(double value, string name) =>
        double.IsFinite(value) && value >= 0 ? value
            : throw new ArgumentOutOfRangeException(name, value, "A width is a finite number, not negative.");
}
