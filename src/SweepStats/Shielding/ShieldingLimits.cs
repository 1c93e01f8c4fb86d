namespace SweepStats.Shielding;

/// <summary>What the readings say of the shielding at one frequency, in dB.</summary>
/// <param name="SeDb">Estimate; infinite where the covered reading does not rise over the floor.</param>
/// <param name="LowDb">Lower end of the two-sided interval.</param>
/// <param name="HighDb">Upper end; infinite where the floor hides it.</param>
/// <param name="StandardUncertaintyDb">Combined standard uncertainty at the estimate, to first order.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom.</param>
internal readonly record struct ShieldingLimits(
    double SeDb, double LowDb, double HighDb, double StandardUncertaintyDb, double DegreesOfFreedom);
