using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>
/// Frequencies at which covered sweeps show neither the reference's shape nor resemble each other, although they stand clear of
/// what is taken for the floor.
/// </summary>
/// <remarks>
/// What they show there is probably the receiver's noise, and the floor lies higher than was measured, declared or known.
/// </remarks>
internal sealed class LostShape
{
    private const double ClearOfFloorDb = 10;

    // Noise scatters as the floor's does, whatever its level; a signal far over the floor scatters as the reference does.
    private const double OfFloorScatter = 0.7;
    private const double OverReferenceScatter = 2;

    private readonly AlignedCampaign _campaign;
    private readonly NoiseFloor? _floor;
    private readonly Lazy<SharedShape> _shape;

    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="floor">What is taken for the floor; null where none is known.</param>
    public LostShape(AlignedCampaign campaign, NoiseFloor? floor)
    {
        (_campaign, _floor) = (campaign, floor);
        _shape = new Lazy<SharedShape>(() => new SharedShape(Rows(campaign.Reference)));
    }

    /// <summary>Whether it can be told for a specimen.</summary>
    public static bool CanTell(SpecimenBlock specimen) =>
        specimen.Block.SweepCount >= 2 && specimen.Block.PointCount >= SharedShape.FewestPoints;

    /// <summary>The frequencies; none where too few are lost to tell them from chance, or where nothing can be told.</summary>
    public ImmutableArray<int> Of(SpecimenBlock specimen)
    {
        if (!CanTell(specimen))
        {
            return [];
        }

        double[][] covered = Rows(specimen.Block);
        bool[] lost = _shape.Value.Lost(covered);
        ImmutableArray<int> here = [.. Enumerable.Range(0, lost.Length).Where(f => lost[f] && IsClearOfFloor(covered, f))];
        return here.Length > SharedShape.HalfWidth(lost.Length) / 2 && ScattersAsNoise(specimen, here) ? here : [];
    }

    private bool IsClearOfFloor(double[][] covered, int f) =>
        _floor is null || covered.Average(s => s[f]) >= _floor.LevelDb[f] + ClearOfFloorDb;

    // Only a measured floor shows how noise scatters here.
    private bool ScattersAsNoise(SpecimenBlock specimen, ImmutableArray<int> here)
    {
        if (_floor is not { Source: FloorSource.Measured })
        {
            return true;
        }

        double scatter = Scatter(specimen.Block, here);
        return scatter >= OfFloorScatter * _floor.ReadingDeviationDb
            && (_campaign.Reference.SweepCount < 2 || scatter >= OverReferenceScatter * Scatter(_campaign.Reference, here));
    }

    // Root mean square over the frequencies of the standard deviation between sweeps, in dB.
    private static double Scatter(SweepBlock block, ImmutableArray<int> here) => Math.Sqrt(here
        .Average(f =>
            Math.Pow(Sample.StandardDeviation([.. Enumerable.Range(0, block.SweepCount).Select(j => block[j][f])]), 2)));

    private static double[][] Rows(SweepBlock block) =>
        [.. Enumerable.Range(0, block.SweepCount).Select(block.Row)];
}
