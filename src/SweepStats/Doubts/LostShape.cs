using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>Frequencies at which covered sweeps show neither the reference's shape nor resemble each other, although they stand clear of what is taken for the floor.</summary>
/// <remarks>What they show there is probably the receiver's noise, and the floor lies higher than was measured, declared or known.</remarks>
internal static class LostShape
{
    private const double ClearOfFloorDb = 10;

    // Noise scatters as the floor's does, whatever its level; a signal far over the floor scatters as the reference does.
    private const double OfFloorScatter = 0.7;
    private const double OverReferenceScatter = 2;

    /// <summary>Whether it can be told for a specimen.</summary>
    public static bool CanTell(SpecimenBlock specimen) => specimen.Block.SweepCount >= 2 && specimen.Block.PointCount >= SharedShape.FewestPoints;

    /// <summary>The frequencies; none where too few are lost to tell them from chance.</summary>
    public static ImmutableArray<bool> Of(AlignedCampaign campaign, SpecimenBlock specimen, NoiseFloor? floor)
    {
        if (!CanTell(specimen))
        {
            return [.. new bool[specimen.Block.PointCount]];
        }

        double[][] covered = Rows(specimen.Block);
        bool[] lost = SharedShape.Lost(Rows(campaign.Reference), covered);
        ImmutableArray<bool> here = [.. lost.Select((gone, f) => gone && (floor is null || covered.Average(s => s[f]) >= floor.LevelDb[f] + ClearOfFloorDb))];
        bool enough = here.Count(h => h) > SharedShape.HalfWidth(lost.Length) / 2;
        return enough && (floor is not { Source: FloorSource.Measured } || ScattersAsNoise(campaign, specimen, floor, here)) ? here : [.. new bool[lost.Length]];
    }

    private static bool ScattersAsNoise(AlignedCampaign campaign, SpecimenBlock specimen, NoiseFloor floor, ImmutableArray<bool> here)
    {
        double scatter = Scatter(specimen.Block, here);
        return scatter >= OfFloorScatter * floor.ReadingDeviationDb && (campaign.Reference.SweepCount < 2 || scatter >= OverReferenceScatter * Scatter(campaign.Reference, here));
    }

    // Root mean square over the frequencies of the standard deviation between sweeps, in dB.
    private static double Scatter(SweepBlock block, ImmutableArray<bool> here) => Math.Sqrt(Enumerable.Range(0, block.PointCount).Where(f => here[f])
        .Average(f => Math.Pow(Sample.StandardDeviation([.. Enumerable.Range(0, block.SweepCount).Select(j => block[j][f])]), 2)));

    private static double[][] Rows(SweepBlock block) => [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())];
}
