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
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="history">When it was measured; null where it was not.</param>
    /// <param name="drifts">How reference and covered sweeps moved.</param>
    /// <param name="timing">When the reference was taken.</param>
    public static CampaignDoubts Of(AlignedCampaign campaign, NoiseFloor? floor, FloorHistory? history, ImmutableArray<DriftTest> drifts, ReferenceTiming timing)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        return new CampaignDoubts
        {
            Motions = FloorMotion.Of(campaign, floor, history),
            Drift = DriftAllowance.Of(drifts, campaign, timing),
            Specimens = [.. campaign.Covered.Select(c => new SpecimenDoubts { Readings = Lost(campaign, c, floor) })],
        };
    }

    /// <summary>The floor, as far off as covered noise shows it to be.</summary>
    public NoiseFloor? Widened(NoiseFloor? floor) =>
        floor is null || Motions.IsEmpty ? floor : floor with { HalfWidthDb = Math.Max(floor.HalfWidthDb, Motions.Max(m => m.ReachDb)) };

    private static ImmutableArray<ReadingDoubts> Lost(AlignedCampaign campaign, SpecimenBlock specimen, NoiseFloor? floor)
    {
        ImmutableArray<bool> lost = LostShape.Of(campaign, specimen, floor);
        return lost.Contains(true) ? [.. lost.Select(l => l ? ReadingDoubts.FloorMoved : ReadingDoubts.None)] : [];
    }
}
