using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;

namespace SweepStats.StudyRuns.Lots;

/// <summary>How often two lots were said to be the same within the margin.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="ApartDb">How far apart they truly are.</param>
/// <param name="Same">Said to be the same at 5 %.</param>
public sealed record SameRow(LotCell Cell, double ApartDb, Tally Same);

/// <summary>Holds "the same within the margin" against two lots that are exactly the margin apart, or alike.</summary>
public static class SameWithinMarginStudy
{
    /// <summary>The margin in dB.</summary>
    public const double MarginDb = 1;

    /// <summary>Two lots, how far apart, and what is capped.</summary>
    public static ImmutableArray<(LotCell Cell, double ApartDb)> Cells { get; } =
    [
        .. from specimens in new[] { 2, 3, 6 }
           from capping in new[] { Capping.None, Capping.Half }
           from apart in new[] { MarginDb, 0 }
           select (new LotCell([specimens, specimens]) { SpecimenDb = 0.3, FrequencyDb = 0.2, Capping = capping }, apart),
        (new LotCell([2, 6]) { SpecimenDb = 0.3, FrequencyDb = 0.2 }, MarginDb),
        (new LotCell([2, 6]) { SpecimenDb = 0.1, FrequencyDb = 0.05, Spreads = [3, 1] }, MarginDb),
    ];

    /// <summary>Draws campaigns and counts.</summary>
    public static SameRow Run(LotCell cell, double apartDb, StudyDraws draws)
    {
        ArgumentNullException.ThrowIfNull(cell);
        LotCell drawn =
            cell with { Steps = [new LotStep("B", new Decibels(apartDb), new FrequencyBand(new Hertz(30e6), new Hertz(1e9)))] };
        var same = new bool?[draws.Campaigns];
        Parallel.For(0, same.Length, i =>
        {
            LotComparison found = drawn.Compare(draws.Seed + (ulong)i, new LotQuestion { MarginDb = MarginDb }).Lots;
            same[i] = found.Whole.Pairs.Length == 1 ? found.Whole.Pairs[0].Tested.Probability <= LotSizeStudy.Level : null;
        });
        return new SameRow(cell, apartDb, Tally.Over(same));
    }
}
