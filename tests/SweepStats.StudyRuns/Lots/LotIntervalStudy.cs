using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Rehearsal;
using SweepStats.Statistics;

namespace SweepStats.StudyRuns.Lots;

/// <summary>Lots beside a reference of few sweeps that do not repeat well.</summary>
/// <param name="Specimens">Specimens of the lot.</param>
/// <param name="SpecimenDb">Standard deviation between specimens in dB.</param>
/// <param name="References">Reference sweeps.</param>
/// <param name="SweepDb">
/// Standard deviation of what all frequencies of a sweep share in dB; it moves covered sweeps too, as a part of what specimens
/// differ by.
/// </param>
public sealed record LotIntervalCell(int Specimens, double SpecimenDb, int References, double SweepDb)
{
    internal RehearsalPlan Plan => new()
    {
        Points = 5,
        SpecimensPerLot = Specimens,
        SpecimenDeviationDb = SpecimenDb,
        ReferenceSweeps = References,
        SweepDeviationDb = SweepDb,
        CoveredSweeps = 9,
    };
}

/// <summary>What intervals and promises of lots held.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Mean">Intervals of the mean that held the true mean of the lot.</param>
/// <param name="Alone">The same by the scatter of the specimens alone.</param>
/// <param name="Broken">Promises over what 95 % of the lot truly keep.</param>
/// <param name="BrokenAlone">The same by the scatter of the specimens alone.</param>
/// <param name="PointBroken">Promises of single frequencies over it.</param>
public sealed record LotIntervalRow(LotIntervalCell Cell, Tally Mean, Tally Alone, Tally Broken, Tally BrokenAlone,
    Tally PointBroken);

/// <summary>Holds intervals and promises of lots against lots whose truth is known.</summary>
public static class LotIntervalStudy
{
    // Standard normal: 5 % of specimens lie lower.
    private const double Quantile = 1.6448536;

    /// <summary>The set-ups.</summary>
    public static ImmutableArray<LotIntervalCell> Cells { get; } =
    [
        new(4, 0.3, 2, 1), new(4, 1, 2, 1), new(2, 1, 2, 1), new(10, 1, 2, 1), new(4, 0.3, 3, 1), new(4, 1, 5, 0.5),
        new(10, 0.5, 5, 0.5), new(4, 1, 5, 0.05),
    ];

    /// <summary>Draws campaigns and counts.</summary>
    public static LotIntervalRow Run(LotIntervalCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        LotComparison[] found = Compared(cell, campaigns, seed);
        double truth = cell.Plan.ShieldingStartDb, kept = truth - (Quantile * cell.SpecimenDb);
        LotSummary[] lots = [.. found.Select(f => f.Whole.Lots[0])];
        static bool? Holds(Interval? interval, double value) => interval?.Contains(value);
        static bool? Over(double? limit, double value) => limit is { } stated ? stated > value : null;
        return new LotIntervalRow(
            cell,
            Tally.Over(lots.Select(l => Holds(l.MeanIntervalDb, truth))),
            Tally.Over(lots.Select(l => Holds(l.BetweenLotsIntervalDb, truth))),
            Tally.Over(lots.Select(l => Over(l.ToleranceLimitDb, kept))),
            Tally.Over(lots.Select(l => Over(l.BetweenLotsLimitDb, kept))),
            Tally.Over(found.Select(f => Over(f.Frequencies[^1].Lots[0].PromisedDb, kept))));
    }

    private static LotComparison[] Compared(LotIntervalCell cell, int campaigns, ulong seed)
    {
        var found = new LotComparison[campaigns];
        Parallel.For(0, campaigns, i =>
        {
            var read = ReadCampaign.Of(Rehearser.Draw(cell.Plan with { Seed = seed + (ulong)i }).Campaign,
                Sweeps.Averaging.Power, []);
            found[i] = LotComparer.Of(read.Aligned, read.Curves, [], new LotQuestion());
        });
        return found;
    }
}
