namespace SweepStats.Shielding;

/// <summary>A level whose error enters the shielding.</summary>
/// <param name="Level">The level.</param>
/// <param name="Slope">By how many dB the shielding moves with each dB of it.</param>
internal readonly record struct SlopedLevel(RepeatedLevel Level, double Slope);
