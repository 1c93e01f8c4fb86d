using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Storage;

namespace SweepStats.Leakage;

/// <summary>
/// Takes a leakage that is the same with and without the specimen out of reference and covered sweeps, as a voltage.
/// </summary>
internal static class LeakageSubtraction
{
    /// <summary>Whether all sweeps that it is taken from carry phase.</summary>
    public static bool IsPossible(AlignedCampaign campaign) =>
        campaign.Reference.HasPhases && campaign.Covered.All(c => c.Block.HasPhases);

    /// <summary>The campaign without the leakage.</summary>
    public static AlignedCampaign From(AlignedCampaign campaign, CoherentFloor floor) => campaign with
    {
        Reference = Without(campaign.Reference, floor.Mean),
        Covered = [.. campaign.Covered.Select(c => c with { Block = Without(c.Block, floor.Mean) })],
    };

    /// <summary>
    /// Root mean square level in dB of what may be left of it: the noise of the floor's mean, and how far the leakage moved from
    /// before to after.
    /// </summary>
    /// <param name="floor">The floor.</param>
    /// <param name="later">Which of its sweeps were taken after the specimens; empty where all were taken at one time.</param>
    public static ImmutableArray<double> RemainderDb(CoherentFloor floor, ImmutableArray<bool> later) =>
        [.. floor.NoisePower()
            .Zip(floor.MotionPower(later), (noise, motion) => 10 * Math.Log10((noise / floor.SweepCount) + motion))];

    private static SweepBlock Without(SweepBlock block, IReadOnlyList<Complex> leakage)
    {
        var levels = new KeptRows[block.SweepCount];
        var phases = new KeptRows[block.SweepCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            Complex[] left = [.. Voltages.Of(block, j).Zip(leakage, (voltage, leak) => voltage - leak)];
            levels[j] = block.Store.Keep([.. left.Select(Voltages.LevelDb)]);
            phases[j] = block.Store.Keep([.. left.Select(Voltages.Degrees)]);
        }

        return new SweepBlock(block.Sweeps, block.PointCount, block.Store, levels, phases);
    }
}
