using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Planning;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Planning;

/// <summary>
/// Holds plans against campaigns of known truth: is the planned half-width met, does the planned claim succeed as often as
/// stated?
/// </summary>
public static class PlanStudy
{
    private const int Points = 101;
    private const double FloorDbm = -100;

    // The plan takes the floor as pooled over nine frequencies; at the ends of a band it has fewer.
    private const int Edge = 4;
    private const double ClaimDb = 40;

    /// <summary>Share of campaigns in which a claim is planned to succeed.</summary>
    public const double Probability = 0.9;

    /// <summary>Twenty set-ups: scatter, placements, numbers and looks all differ.</summary>
    public static ImmutableArray<PlanCell> Cells { get; } =
    [
        new(20, 0.2, 0, 0, 3, 3, 3), new(20, 0.5, 0, 0, 5, 5, 3), new(100, 1, 0, 0, 10, 10, 3), new(3, 0.5, 0, 0, 5, 10, 3),
        new(1, 0.3, 0, 0, 10, 5, 6), new(1, 1, 0, 0, 20, 20, 3), new(10, 2, 0, 0, 10, 20, 6), new(50, 0.1, 0, 0, 2, 5, 6),
        new(20, 0.5, 0, 0, 3, 20, 3), new(1000, 0.5, 0, 0, 20, 3, 3), new(20, 0.2, 0.5, 3, 3, 9, 3), new(20, 0.2, 1, 5, 3, 15, 3),
        new(20, 0.5, 0.5, 5, 1, 5, 3), new(100, 0.3, 1, 4, 5, 10, 4), new(3, 0.5, 0.3, 3, 5, 15, 3),
        new(1, 0.3, 0.5, 6, 5, 10, 4), new(10, 1, 0.2, 5, 5, 5, 4), new(50, 0.2, 0.8, 10, 2, 20, 2), new(20, 0.1, 2, 8, 2, 5, 5),
        new(5, 0.8, 0.4, 4, 3, 4, 6),
    ];

    /// <summary>Plans a set-up and rehearses it.</summary>
    /// <param name="cell">The set-up.</param>
    /// <param name="campaigns">Campaigns for each of the two figures.</param>
    /// <param name="seed">Seed of all draws.</param>
    public static PlanRow Run(PlanCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        PlanBasis basis =
            PlanBasis.Stated(cell.ScatterDb, cell.Placements > 0 ? cell.PlacementDeviationDb : null, null, cell.Looks);
        var numbers = new SweepNumbers(Math.Max(1, cell.Placements), cell.Sweeps, cell.ReferenceSweeps);
        var forecast = new ResultForecast(basis, numbers, Confidence.NinetyFive);
        double? range = new ClaimForecast(forecast, ClaimDb, ClaimDb + cell.MarginDb).RangeNeededDb(Probability);
        return new PlanRow(
            cell,
            campaigns,
            HalfWidthForecast.Db(basis, numbers, Confidence.NinetyFive),
            HalfWidth(cell, campaigns, seed),
            range,
            range is { } db ? Claimed(cell, basis.Noise[0].SnrInDecibels(db), campaigns, seed + 1_000_000) : 0);
    }

    // 60 dB over the noise nothing of it is left in the scatter.
    private static double HalfWidth(PlanCell cell, int campaigns, ulong seed)
    {
        var widths = Readings(Plan(cell) with { ReferenceDbm = FloorDbm + 80, ShieldingStartDb = 20, ShieldingStopDb = 20 },
            campaigns, seed)
            .OfType<ShieldingReading.Measured>().Select(m => (m.Shielding.High.Value - m.Shielding.Low.Value) / 2);
        return Sample.Median([.. widths]);
    }

    private static double Claimed(PlanCell cell, double snrDb, int campaigns, ulong seed)
    {
        double shielding = ClaimDb + cell.MarginDb;
        RehearsalPlan plan =
            Plan(cell) with { ReferenceDbm = FloorDbm + snrDb, ShieldingStartDb = shielding, ShieldingStopDb = shielding };
        return Readings(plan, campaigns, seed)
            .Average(r => r.Evidence.OneSidedLow is { } low && low.Value >= ClaimDb ? 1.0 : 0.0);
    }

    private static IEnumerable<ShieldingReading> Readings(RehearsalPlan plan, int campaigns, ulong seed) =>
        Enumerable.Range(0, campaigns).SelectMany(i =>
        {
            AlignedCampaign aligned = Aligner.Align(Rehearser.Draw(plan with { Seed = seed + (ulong)i }).Campaign, null);
            NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, Averaging.Power);
            return new ShieldingEstimator(aligned, floor, Confidence.NinetyFive, []).Estimate(aligned.Covered[0]).Readings
                .Skip(Edge).SkipLast(Edge);
        });

    private static RehearsalPlan Plan(PlanCell cell) => new()
    {
        Points = Points,
        Placements = cell.Placements,
        CoveredSweeps = cell.Sweeps,
        ReferenceSweeps = cell.ReferenceSweeps,
        PlacementDeviationDb = cell.PlacementDeviationDb,
        ScatterDb = cell.ScatterDb,
        FloorDbm = FloorDbm,
        Looks = cell.Looks,
    };
}
