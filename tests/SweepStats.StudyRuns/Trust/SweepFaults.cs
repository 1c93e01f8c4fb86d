using System.Collections.Immutable;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Trust;

/// <summary>What makes repeats differ: drift, a sweep that is off, placements, loose contacts.</summary>
internal static class SweepFaults
{
    private const int Third = 3;
    private static readonly ImmutableArray<double> Drifts = [0, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 2, 3];
    private static readonly ImmutableArray<double> Offsets = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4];
    private static readonly ImmutableArray<double> Shapes = [0, 0.1, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 2];

    /// <summary>The curves: each a kind of fault, over its sizes.</summary>
    public static ImmutableArray<FaultCurve> All { get; } =
    [
        new("drift", "steady, times known", "dB", Drifts, db => Drifting(db, DriftShape.Steady, times: true)),
        new("drift", "steady, no times", "dB", Drifts, db => Drifting(db, DriftShape.Steady, times: false)),
        new("drift", "warm-up, times known", "dB", Drifts, db => Drifting(db, DriftShape.WarmUp, times: true)),
        new("drift", "warm-up, no times", "dB", Drifts, db => Drifting(db, DriftShape.WarmUp, times: false)),
        Odd("offset, one reference of five", SweepRole.Reference, Offsets, db => new OddSweep(SweepRole.Reference, Third, db)),
        Odd("offset, one covered of five", SweepRole.Covered, Offsets, db => new OddSweep(SweepRole.Covered, Third, db)),
        Odd("shape, one reference of five", SweepRole.Reference, Shapes, db => new OddSweep(SweepRole.Reference, Third, 0, db)),
        Odd("shape, one covered of five", SweepRole.Covered, Shapes, db => new OddSweep(SweepRole.Covered, Third, 0, db)),
        new("placement-effect", "spread of 3 placements", "dB", Shapes, Placed),
        new("non-normal", "points off by 1 dB", "% of the points", [0, 0.5, 1, 2, 5, 10, 20],
            share => KnownFaults.With(plan => plan with { JumpShare = share / 100, JumpDb = -1 })),
    ];

    // From the first reference sweep to the last, with the covered sweeps in between: what the source does before and behind them
    // harms nothing. The floor is stated.
    private static TrustCase Drifting(double db, DriftShape shape, bool times)
    {
        TrustCase moving = KnownFaults.With(plan => plan with
        {
            DriftDb = db,
            DriftShape = shape,
            FloorSweeps = 0,
            LinearitySourcesDbm = [],
            PlateSweeps = 0,
            StartsAt = times ? new DateTimeOffset(2026, 3, 5, 8, 0, 0, TimeSpan.Zero) : null,
        });
        return moving with { Analysed = moving.Analysed with { DeclaredFloorDb = moving.Drawn.FloorDbm } };
    }

    // Found only where the sweep itself is named: another one accused is no help.
    private static FaultCurve Odd(string name, SweepRole role, ImmutableArray<double> sizes, Func<double, OddSweep> sweep)
    {
        string file = FormattableString.Invariant($"{role.ToString().ToLowerInvariant()}-{Third:00}");
        return new FaultCurve("odd-sweep", name, "dB", sizes,
            db => KnownFaults.With(plan => plan with { OddSweeps = [sweep(db)] }))
        {
            IsAbout = finding => finding.Message.Contains(file, StringComparison.Ordinal),
        };
    }

    private static TrustCase Placed(double spread) => KnownFaults.With(plan => plan with
    {
        Placements = 3,
        CoveredSweeps = 2,
        SpecimensPerLot = 3,
        PlacementDeviationDb = spread,
    });
}
