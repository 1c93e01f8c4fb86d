using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;

namespace SweepStats.Doubts;

/// <summary>Frequencies at which covered sweeps show neither the reference's shape nor resemble each other, although they stand clear of what is taken for the floor.</summary>
/// <remarks>What they show there is probably the receiver's noise, and the floor lies higher than was measured, declared or known.</remarks>
internal static class LostShape
{
    private const double ClearOfFloorDb = 10;

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
        return here.Count(h => h) > SharedShape.HalfWidth(lost.Length) / 2 ? here : [.. new bool[lost.Length]];
    }

    private static double[][] Rows(SweepBlock block) => [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())];
}
