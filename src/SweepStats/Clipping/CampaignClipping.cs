using System.Collections.Immutable;

namespace SweepStats.Clipping;

/// <summary>Readings of a campaign that are cut off from above. Immutable.</summary>
/// <param name="Reference">Of the reference.</param>
/// <param name="Covered">Of each specimen, in the order of the specimens.</param>
public sealed record CampaignClipping(ClippedReadings Reference, ImmutableArray<ClippedReadings> Covered);
