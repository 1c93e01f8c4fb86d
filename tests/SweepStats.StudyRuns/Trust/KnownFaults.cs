using System.Collections.Immutable;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Trust;

/// <summary>
/// Every fault whose size is measured against its detection: each alone, in an otherwise clean campaign of five sweeps of each
/// role and 20 looks of power averaging.
/// </summary>
public static class KnownFaults
{
    /// <summary>All faults.</summary>
    public static ImmutableArray<FaultCurve> All { get; } = [.. ReceiverFaults.All, .. SweepFaults.All, .. PathFaults.All];

    /// <summary>The campaign that is faulted.</summary>
    internal static TrustCase Clean { get; } = new CleanCell(Averaging.Power, Averaging.Power, 20, 5).Case(placements: false);

    /// <summary>The clean campaign with one thing changed.</summary>
    internal static TrustCase With(Func<RehearsalPlan, RehearsalPlan> change) => Clean with { Drawn = change(Clean.Drawn) };

    /// <summary>The clean campaign behind a specimen that shields the same at every frequency.</summary>
    internal static TrustCase Shielding(double db, Func<RehearsalPlan, RehearsalPlan> change) =>
        With(plan => change(plan with { ShieldingStartDb = db, ShieldingStopDb = db }));
}
