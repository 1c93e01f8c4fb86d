using SweepStats.Sweeps;

namespace SweepStats.Trends;

/// <summary>One specimen and the value that the ordered factor has for it.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="Value">Such as a number of washes; finite, in the unit of the user's column.</param>
/// <param name="MeanDb">Mean shielding over the clear part of the whole band in dB; not a number where no part is clear.</param>
public readonly record struct FactorSpecimen(SpecimenName Name, double Value, double MeanDb);
