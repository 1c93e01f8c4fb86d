using SweepStats.Shielding;

namespace SweepStats.Lots;

/// <summary>Specimens by their shielding and by their sweeps, in the same order.</summary>
/// <param name="Curves">Shielding over frequency.</param>
/// <param name="Sweeps">The sweeps it comes from.</param>
internal readonly record struct CurvesAndSweeps(ImmutableArray<ShieldingCurve> Curves, ImmutableArray<SpecimenSweeps> Sweeps);
