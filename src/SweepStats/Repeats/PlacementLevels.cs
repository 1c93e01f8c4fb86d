using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>How high the placements of one specimen read, each as a whole. Immutable.</summary>
/// <remarks>
/// As read, with the noise in: a placement that the floor hides would else be a bound, which says nothing of how far it lies
/// from the others. Noise only brings placements together, so it accuses none. A placement counts with the median of its
/// sweeps, so that one odd sweep is not taken for it.
/// </remarks>
internal sealed record PlacementLevels
{
    // Noise adds less than half a dB from here on.
    private const double ClearOfFloorDb = 10;

    /// <summary>Which specimen.</summary>
    public required SpecimenName Specimen { get; init; }

    /// <summary>Names of the placements, at least two, as they come.</summary>
    public required ImmutableArray<string> Names { get; init; }

    /// <summary>Level of each in dB: mean over the frequencies, median over the sweeps.</summary>
    public required double[] Db { get; init; }

    /// <summary>Frequencies that count: nothing transmits there, and one placement at least stands clear of the floor.</summary>
    public required int[] Points { get; init; }

    /// <summary>The placements of a specimen; null where fewer than two are named, or the floor hides all of them.</summary>
    public static PlacementLevels? Of(SpecimenBlock specimen, NoiseFloor? floor)
    {
        SweepBlock block = specimen.Block;
        IGrouping<string, int>[] placements =
        [
            .. Enumerable.Range(0, block.SweepCount).Where(j => block.Sweeps[j].Placement is not null)
                .GroupBy(j => block.Sweeps[j].Placement!),
        ];
        if (placements.Length < 2 || Seen(block, placements, floor) is not { Length: > 0 } points)
        {
            return null;
        }

        double Level(int sweep) => Sample.Mean(RowPart.At(block[sweep], points));
        return new PlacementLevels
        {
            Specimen = specimen.Name,
            Names = [.. placements.Select(p => p.Key)],
            Db = [.. placements.Select(p => Sample.Median([.. p.Select(Level)]))],
            Points = points,
        };
    }

    private static int[] Seen(SweepBlock block, IGrouping<string, int>[] placements, NoiseFloor? floor)
    {
        int[] all = [.. Enumerable.Range(0, block.PointCount)];
        if (floor is null)
        {
            return all;
        }

        ImmutableArray<double>[] means = [.. placements.Select(p => block.Means([.. p]))];
        return [.. all.Where(f => !floor.Ambient[f] && means.Any(m => m[f] >= floor.LevelDb[f] + ClearOfFloorDb))];
    }
}
