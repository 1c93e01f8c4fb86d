namespace SweepStats.Verdicts;

/// <summary>How probably the shielding at a frequency conforms to the requirement, as far as it is known.</summary>
/// <remarks>
/// The one-sided level at which the lower limit equals the requirement: at least the level of the rule where the requirement is
/// met (and no guard band is asked), at most one less that level where it fails. Far above the floor this is T_ν((SE − R)/u), the
/// probability of JCGM 106:2012, 7.
/// </remarks>
/// <param name="Least">It is not below this, 0 to 1.</param>
/// <param name="Most">It is not above this; equal to <paramref name="Least"/> where the probability is known.</param>
public readonly record struct ConformanceProbability(double Least, double Most)
{
    /// <summary>A known probability.</summary>
    public static ConformanceProbability Of(double value) => new(value, value);

    /// <summary>Neither bound only.</summary>
    public bool IsKnown => Least == Most;
}
