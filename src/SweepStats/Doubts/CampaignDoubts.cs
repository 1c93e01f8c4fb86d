using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Doubts;

/// <summary>What may have moved the shielding beside scatter and noise, over a whole campaign. Immutable.</summary>
public sealed record CampaignDoubts
{
    /// <summary>Noise that has risen since the floor was measured, by specimens that show it.</summary>
    public required ImmutableArray<FloorMotion> Motions { get; init; }

    /// <summary>A drift that shows in the sweeps, as an error of the shielding; null where none does.</summary>
    public required UncertaintyEntry? Drift { get; init; }

    /// <summary>Doubts of single readings, one a specimen, in their order.</summary>
    public required ImmutableArray<SpecimenDoubts> Specimens { get; init; }

    /// <summary>The floor, as far off as covered noise shows it to be.</summary>
    public NoiseFloor? Widened(NoiseFloor? floor) =>
        floor is null || Motions.IsEmpty ? floor
            : floor with { HalfWidthDb = Math.Max(floor.HalfWidthDb, Motions.Max(m => m.ReachDb)) };

    /// <summary>Looks for doubts of single readings.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="overload">Where the receiver no longer follows the level.</param>
    /// <param name="threads">Threads to use.</param>
    internal static ImmutableArray<SpecimenDoubts> OfSpecimens(
        AlignedCampaign campaign, NoiseFloor? floor, ReferenceOverload overload, int threads)
    {
        var shape = new LostShape(campaign, floor);
        SpecimenDoubts Of(int i) => Lost(shape.Of(campaign.Covered[i]), campaign.Grid.Count)
            .With(OverloadDoubts.Of(campaign.Grid.Count, overload.OfReference, overload.OfCovered(campaign.Covered[i], i),
                overload.AtBottom(i)));
        return ImmutableArray.Create(SideBySide.Of(campaign.Covered.Length, threads, Of));
    }

    private static SpecimenDoubts Lost(ImmutableArray<int> places, int points)
    {
        if (places.IsEmpty)
        {
            return SpecimenDoubts.None;
        }

        var readings = new ReadingDoubts[points];
        foreach (int place in places)
        {
            readings[place] = ReadingDoubts.FloorMoved;
        }

        return new SpecimenDoubts { LostShape = places, Readings = ImmutableArray.Create(readings) };
    }
}
