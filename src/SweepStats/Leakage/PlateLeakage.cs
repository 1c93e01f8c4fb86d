using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Sweeps;

namespace SweepStats.Leakage;

/// <summary>What comes round the specimen: the level behind a solid metal plate in its place, less the noise.</summary>
/// <remarks>A plate lets nothing through, so what is read beyond the noise took another way.</remarks>
internal static class PlateLeakage
{
    // Below twice the noise what is left of a plate's level without it is known too badly.
    private const double LeastOverFloorDb = 3;

    // Chance that a plate sweep through which nothing comes shows leakage somewhere, all frequencies together.
    private const double FalseAlarm = 0.005;

    /// <summary>The leakage; null where no plate sweep lies on the common grid.</summary>
    public static SteadyLeakage? Of(AlignedCampaign campaign, NoiseFloor? floor)
    {
        List<double[]> plates = [.. SetAsideSweeps.OnGrid(campaign, SweepRole.Plate).Select(s => s.Levels)];
        if (plates.Count == 0)
        {
            return null;
        }

        double told = TellableOverFloor(floor, plates.Count, campaign.Grid.Count);
        double[] levels = [.. Enumerable.Range(0, campaign.Grid.Count).Select(f => At(plates.Average(p => p[f]), f, floor, told))];
        return new SteadyLeakage { Source = LeakageSource.Plate, LevelDb = SteadyLeakage.Filled(levels) };
    }

    // Means of few sweeps of noise stand over the floor by chance: the fewer looks, the farther.
    private static double TellableOverFloor(NoiseFloor? floor, int sweeps, int points) => floor is null
        ? LeastOverFloorDb
        : Math.Max(LeastOverFloorDb, floor.Noise.Max(n => n.CriticalRise(sweeps, 1 - (FalseAlarm / points))));

    private static double At(double plate, int f, NoiseFloor? floor, double toldDb)
    {
        if (floor is null)
        {
            return plate;
        }

        double over = plate - floor.LevelDb[f];
        return floor.Ambient[f] || over < toldDb ? double.NegativeInfinity : plate + (10 * Math.Log10(1 - Math.Pow(10, -over / 10)));
    }
}
