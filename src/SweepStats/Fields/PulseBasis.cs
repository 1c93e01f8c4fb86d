using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Verdicts;

namespace SweepStats.Fields;

/// <summary>What a measurement says to a pulse. Immutable.</summary>
/// <param name="Campaign">The sweeps, for their frequencies and phases.</param>
/// <param name="Curves">Shielding of each specimen.</param>
/// <param name="Findings">What the checks found.</param>
/// <param name="Trust">Whether the measurement can be trusted.</param>
public sealed record PulseBasis(AlignedCampaign Campaign, ImmutableArray<ShieldingCurve> Curves,
    ImmutableArray<Finding> Findings, Trust Trust);
