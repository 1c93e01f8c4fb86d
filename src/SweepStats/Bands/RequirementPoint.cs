using SweepStats.Quantities;

namespace SweepStats.Bands;

/// <summary>A point of a requirement over frequency.</summary>
/// <param name="Frequency">Where it lies.</param>
/// <param name="Shielding">The shielding asked for there.</param>
public readonly record struct RequirementPoint(Hertz Frequency, Decibels Shielding);
