using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Repeats;
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

    /// <summary>Looks for all of it.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="floor">The floor, null where none is known, and when it was measured.</param>
    /// <param name="drift">How reference and covered sweeps moved, and when the reference was taken.</param>
    /// <param name="overload">Where the receiver no longer follows the level.</param>
    /// <param name="threads">Threads to use.</param>
    internal static CampaignDoubts Of(
        AlignedCampaign campaign, (NoiseFloor? Level, FloorHistory? History) floor, (ImmutableArray<DriftTest> Tests, ReferenceTiming Timing) drift,
        ReferenceOverload overload, int threads) => new()
        {
            Motions = FloorMotion.Of(campaign, floor.Level, floor.History),
            Drift = DriftAllowance.Of(drift.Tests, campaign, drift.Timing),
            Specimens = OfSpecimens(campaign, floor.Level, overload, threads),
        };

    /// <summary>The floor, as far off as covered noise shows it to be.</summary>
    public NoiseFloor? Widened(NoiseFloor? floor) =>
        floor is null || Motions.IsEmpty ? floor : floor with { HalfWidthDb = Math.Max(floor.HalfWidthDb, Motions.Max(m => m.ReachDb)) };

    // Each specimen stands alone and goes to its own place, so the number of threads changes nothing.
    private static ImmutableArray<SpecimenDoubts> OfSpecimens(AlignedCampaign campaign, NoiseFloor? floor, ReferenceOverload overload, int threads)
    {
        var shape = new LostShape(campaign, floor);
        var doubts = new SpecimenDoubts[campaign.Covered.Length];
        Parallel.For(0, doubts.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, i =>
        {
            SpecimenBlock specimen = campaign.Covered[i];
            doubts[i] = Lost(shape.Of(specimen), campaign.Grid.Count)
                .With(OverloadDoubts.Of(campaign.Grid.Count, overload.OfReference, overload.OfCovered(specimen, i), overload.AtBottom(i)));
        });
        return ImmutableArray.Create(doubts);
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
