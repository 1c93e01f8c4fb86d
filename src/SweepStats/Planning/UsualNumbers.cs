using SweepStats.Alignment;

namespace SweepStats.Planning;

/// <summary>Numbers of sweeps where none are asked for.</summary>
public static class UsualNumbers
{
    private const int Placements = 3;
    private const int SweepsEach = 3;
    private const int SweepsOfOne = 5;

    /// <summary>What a pilot took of its first specimen.</summary>
    public static SweepNumbers OfPilot(AlignedCampaign campaign)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        SweepBlock covered = campaign.Covered[0].Block;
        int placements = covered.Placements().Max() + 1;
        return new SweepNumbers(placements, Math.Max(1, covered.SweepCount / placements), campaign.Reference.SweepCount);
    }

    /// <summary>
    /// The pilot's numbers where they show what is planned for, else three placements of three sweeps, or five sweeps where
    /// placements are not known; as many of the reference.
    /// </summary>
    /// <param name="basis">What is known of the set-up.</param>
    /// <param name="pilot">What the pilot took; null without one.</param>
    public static SweepNumbers For(PlanBasis basis, SweepNumbers? pilot)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool byPlacement = basis.PlacementDeviationDb is not null;
        if (pilot is { Repeated: true } taken && taken.Placements > 1 == byPlacement)
        {
            return taken;
        }

        return byPlacement ? new SweepNumbers(Placements, SweepsEach, Placements * SweepsEach)
            : new SweepNumbers(1, SweepsOfOne, SweepsOfOne);
    }
}
