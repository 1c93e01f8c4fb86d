using SweepStats.Bands;
using SweepStats.Shielding;

namespace SweepStats.Verdicts;

/// <summary>The shielding of all specimens, and what holds of each over the band, in the same order. Immutable.</summary>
/// <param name="Curves">The curves.</param>
/// <param name="Bands">The statements.</param>
public sealed record CurvesAndBands(ImmutableArray<ShieldingCurve> Curves, ImmutableArray<BandStatement> Bands);
