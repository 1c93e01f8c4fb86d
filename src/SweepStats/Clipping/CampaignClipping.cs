namespace SweepStats.Clipping;

/// <summary>Readings of a campaign that are cut off. Immutable.</summary>
/// <param name="Reference">Of the reference, from above.</param>
/// <param name="Covered">Of each specimen, from above, in the order of the specimens.</param>
/// <param name="CoveredAtBottom">
/// Frequencies at which each specimen's sweeps stand at the bottom of what is shown; empty where there are none.
/// </param>
public sealed record CampaignClipping(
    ClippedReadings Reference, ImmutableArray<ClippedReadings> Covered, ImmutableArray<ImmutableArray<bool>> CoveredAtBottom);
