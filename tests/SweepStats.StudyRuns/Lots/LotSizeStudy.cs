using System.Collections.Immutable;
using SweepStats.Lots;

namespace SweepStats.StudyRuns.Lots;

/// <summary>How often lots that are alike were taken for different, at 5 %.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Capped">Readings known from below only.</param>
/// <param name="Band">By the answer for the band.</param>
/// <param name="Curves">By the curves over the clear part alone.</param>
/// <param name="Equal">By these curves, were the lots taken to scatter alike.</param>
/// <param name="Frequencies">Single frequencies by themselves.</param>
/// <param name="Adjusted">Campaigns in which a frequency showed a difference, their number allowed for.</param>
public sealed record LotSizeRow(LotCell Cell, Tally Capped, Tally Band, Tally Curves, Tally Equal, Tally Frequencies,
    Tally Adjusted);

/// <summary>Compares lots that are alike: how often is a difference found where there is none?</summary>
public static class LotSizeStudy
{
    /// <summary>Chance of a false alarm that is asked for.</summary>
    public const double Level = 0.05;

    private static readonly ImmutableArray<int>[] Designs =
        [[2, 2], [3, 3], [2, 6], [4, 4, 4], [2, 4, 6], [2, 2, 2, 2, 2], [6, 6, 6, 6, 6]];

    // The first of the unequal kinds are drawn in other ways too.
    private const int Bare = 5;

    private static readonly ImmutableArray<LotCell> Unequal =
    [
        new([2, 6]) { Spreads = [3, 1] }, new([2, 6, 6]) { Spreads = [3, 1, 1] }, new([2, 2]) { Spreads = [3, 1] },
        new([2, 6]) { Spreads = [1, 3] }, new([4, 4, 4]) { Spreads = [3, 1, 1] },
        new([2, 2, 2, 2, 2]) { Spreads = [3, 1, 1, 1, 1] }, new([3, 6]) { Spreads = [3, 1] },
        new([2, 4, 6]) { Spreads = [3, 2, 1] }, new([2, 6]) { Spreads = [10, 1] },
        new([6, 6, 6, 6, 6]) { Spreads = [3, 1, 1, 1, 1] }, new([1, 6]), new([1, 6]) { Spreads = [2, 1] },
        new([1, 6]) { Spreads = [3, 1] }, new([1, 4, 4]) { Spreads = [2, 1, 1] },
    ];

    /// <summary>Numbers of lots and specimens, capped and not; how specimens differ, and placements.</summary>
    public static ImmutableArray<LotCell> Cells { get; } =
    [
        .. from design in Designs from capping in Enum.GetValues<Capping>() select new LotCell(design) { Capping = capping },
        .. from capping in Enum.GetValues<Capping>() from cell in Kinds(capping) select cell,
    ];

    /// <summary>
    /// Lots whose specimens scatter by unequal amounts, as whole curves and from frequency to frequency; the same with specimens
    /// that differ by frequency alone, and capped.
    /// </summary>
    public static ImmutableArray<LotCell> UnequalCells { get; } =
    [
        .. Unequal, .. Unequal.Take(Bare).Select(cell => cell with { SpecimenDb = 0, FrequencyDb = 1 }),
        .. from capping in new[] { Capping.Half, Capping.Specimens } from cell in Unequal.Take(Bare)
            select cell with { Capping = capping },
    ];

    /// <summary>Draws campaigns and counts.</summary>
    /// <param name="cell">The set-up.</param>
    /// <param name="campaigns">How many.</param>
    /// <param name="seed">Of the first campaign.</param>
    public static LotSizeRow Run(LotCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var found = new (LotComparison Lots, Tally Capped)[campaigns];
        Parallel.For(0, campaigns, i => found[i] = cell.Compare(seed + (ulong)i, new LotQuestion()));
        return new LotSizeRow(
            cell,
            new Tally(found.Sum(f => f.Capped.Count), found.Sum(f => f.Capped.Of)),
            Tally.Over(found.Select(f => Below(f.Lots.Whole.Probability))),
            Tally.Over(found.Select(f => Below(f.Lots.Whole.Curves?.Probability))),
            Tally.Over(found.Select(f => Below(f.Lots.Whole.Curves?.ProbabilityOfEqualScatter))),
            Tally.Over(found.SelectMany(f => f.Lots.Frequencies).Select(p => Below(p.Probability))),
            Tally.Over(found.Select(f => Below(f.Lots.Frequencies.Min(p => p.Adjusted)))));
    }

    private static bool? Below(double? probability) => probability is { } known ? known < Level : null;

    private static IEnumerable<LotCell> Kinds(Capping capping)
    {
        var three = new LotCell([4, 4, 4]) { Capping = capping };
        yield return three with { SpecimenDb = 0, FrequencyDb = 1 };
        yield return three with { SpecimenDb = 2, FrequencyDb = 0 };
        yield return three with { SpecimenDb = 0.3, FrequencyDb = 0 };
        yield return three with { SpecimenDb = 0.3, FrequencyDb = 0.2, Placements = 3, PlacementDb = 0.4 };
    }
}
