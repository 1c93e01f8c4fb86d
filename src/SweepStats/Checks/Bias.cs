namespace SweepStats.Checks;

/// <summary>
/// How far the true shielding may lie outside the interval for what a finding says, in dB; infinite where nobody knows.
/// </summary>
/// <param name="LowerByDb">Below the lower end.</param>
/// <param name="HigherByDb">Above the upper end.</param>
public readonly record struct Bias(double LowerByDb, double HigherByDb)
{
    /// <summary>Either way, by an unknown amount.</summary>
    public static Bias Unknown { get; } = new(double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>The shielding comes out too small, by an unknown amount.</summary>
    public static Bias TooSmall { get; } = new(0, double.PositiveInfinity);
}
