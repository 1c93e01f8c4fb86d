using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Rehearsal;

namespace SweepStats.StudyRuns.Lots;

/// <summary>One lot of which a limit is stated that 95 % of its specimens keep.</summary>
/// <param name="Specimens">Specimens measured.</param>
public sealed record ToleranceCell(int Specimens)
{
    /// <summary>Placements of a specimen; 0 leaves them unnamed.</summary>
    public int Placements { get; init; }

    /// <summary>Standard deviation in dB between placements.</summary>
    public double PlacementDb { get; init; }

    /// <summary>Specimens differ at every frequency by itself, and not as whole curves: 21 samples a campaign.</summary>
    public bool ByFrequency { get; init; }

    /// <summary>Shielding of the lot in dB; the reference stands 70 dB over the noise.</summary>
    public double ShieldingDb { get; init; } = 40;

    // Reference and floor are well known: their errors add little to the limit.
    internal RehearsalPlan Plan => new()
    {
        Points = LotCell.Points,
        SpecimensPerLot = Specimens,
        SpecimenDeviationDb = ByFrequency ? 0 : ToleranceStudy.SpecimenDb,
        PlacementScatterDb = ByFrequency ? ToleranceStudy.SpecimenDb : 0,
        Placements = Placements,
        PlacementDeviationDb = PlacementDb,
        CoveredSweeps = Placements > 0 ? 1 : 3,
        ReferenceSweeps = 20,
        FloorSweeps = 20,
        ScatterDb = 0.1,
        ShieldingStartDb = ShieldingDb,
        ShieldingStopDb = ShieldingDb,
    };
}

/// <summary>How often a limit lay over what 95 % of the lot truly keep.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Capped">Readings known from below only.</param>
/// <param name="Broken">Limits over the true 5 % quantile, of all lots or frequencies asked; no limit is none broken.</param>
/// <param name="Stated">Lots or frequencies with a limit.</param>
public sealed record ToleranceRow(ToleranceCell Cell, Tally Capped, Tally Broken, Tally Stated);

/// <summary>Holds tolerance limits against lots whose specimens are known.</summary>
public static class ToleranceStudy
{
    /// <summary>Standard deviation between specimens in dB.</summary>
    public const double SpecimenDb = 1;

    // Standard normal: 5 % of specimens lie lower.
    private const double Quantile = 1.6448536;

    /// <summary>Limits of means over the band, then limits at single frequencies with specimens capped.</summary>
    public static ImmutableArray<ToleranceCell> Cells { get; } =
    [
        .. from pieces in new[] { 3, 5, 10, 20 } select new ToleranceCell(pieces),
        .. from pieces in new[] { 3, 5, 10, 20 } select new ToleranceCell(pieces) { Placements = 3, PlacementDb = 1 },
        .. from pieces in new[] { 3, 5, 10, 20 } from shielding in new double[] { 40, 69, 71, 73 }
            select new ToleranceCell(pieces) { ByFrequency = true, ShieldingDb = shielding },
    ];

    /// <summary>Draws campaigns and counts.</summary>
    public static ToleranceRow Run(ToleranceCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        double truth = cell.ShieldingDb - (Quantile * SpecimenDb);
        var limits = new double?[campaigns][];
        var capped = new Tally[campaigns];
        Parallel.For(0, campaigns, i =>
        {
            var read = ReadCampaign.Of(Rehearser.Draw(cell.Plan with { Seed = seed + (ulong)i }).Campaign,
                Sweeps.Averaging.Power, []);
            LotComparison found = LotComparer.Of(read.Aligned, read.Curves, [], new LotQuestion());
            limits[i] = cell.ByFrequency ? [.. found.Frequencies.Select(f => f.Lots[0].PromisedDb)]
                : [found.Whole.Lots[0].ToleranceLimitDb];
            capped[i] = read.Capped();
        });
        double?[] all = [.. limits.SelectMany(l => l)];
        return new ToleranceRow(
            cell, new Tally(capped.Sum(c => c.Count), capped.Sum(c => c.Of)), new Tally(all.Count(l => l > truth), all.Length),
            new Tally(all.Count(l => l is not null), all.Length));
    }
}
