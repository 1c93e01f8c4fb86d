using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>How far the true shielding of one specimen at one frequency may lie outside its interval.</summary>
/// <param name="Specimen">The specimen.</param>
/// <param name="At">Frequency.</param>
/// <param name="Bias">How far, in dB.</param>
public readonly record struct PlacedBias(SpecimenName Specimen, Hertz At, Bias Bias);
