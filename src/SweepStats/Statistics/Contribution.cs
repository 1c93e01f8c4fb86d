namespace SweepStats.Statistics;

/// <summary>One part of an uncertainty: a standard uncertainty with its degrees of freedom.</summary>
/// <param name="StandardUncertainty">Standard uncertainty, not negative, in the unit of the quantity.</param>
/// <param name="DegreesOfFreedom">Positive; infinity where the part is taken as known.</param>
public readonly record struct Contribution(double StandardUncertainty, double DegreesOfFreedom)
{
    /// <summary>No uncertainty.</summary>
    public static Contribution None { get; } = new(0, double.PositiveInfinity);

    /// <summary>The same part seen through a slope.</summary>
    public Contribution Scaled(double slope) => new(Math.Abs(slope) * StandardUncertainty, DegreesOfFreedom);
}
