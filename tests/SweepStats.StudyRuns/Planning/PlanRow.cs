namespace SweepStats.StudyRuns.Planning;

/// <summary>A plan and what rehearsed campaigns made of it.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Campaigns">Campaigns drawn for each of the two figures.</param>
/// <param name="PlannedHalfWidthDb">Half-width that the middle campaign is to have.</param>
/// <param name="HalfWidthDb">Median half-width over the campaigns and their frequencies.</param>
/// <param name="PlannedRangeDb">
/// Displayed reference less displayed floor at which the claim is to succeed in nine of ten; null where none is enough.
/// </param>
/// <param name="ClaimedShare">Share of readings with that range whose one-sided limit reached the claim.</param>
public sealed record PlanRow(
    PlanCell Cell, int Campaigns, double PlannedHalfWidthDb, double HalfWidthDb, double? PlannedRangeDb, double ClaimedShare);
