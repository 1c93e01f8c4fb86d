using System.Collections.Immutable;
using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Leakage;

/// <summary>What comes round the specimen: the level behind a solid metal plate in its place, less the noise.</summary>
/// <remarks>
/// A plate lets nothing through, so what is read beyond the noise took another way. Where nothing shows beyond the noise, as much
/// may come round as would not show: that limit tells how far the plate was a test at all.
/// </remarks>
internal static class PlateLeakage
{
    // Below twice the noise what is left of a plate's level without it is known too badly.
    private const double LeastOverFloorDb = 3;

    // A leakage that does not show is taken to be alike over so many frequencies to either side.
    private const int Neighbours = 4;

    // Chance that a plate sweep through which nothing comes shows leakage somewhere, all frequencies together.
    private const double FalseAlarm = 0.005;

    /// <summary>The leakage; null where no plate sweep lies on the common grid.</summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="floor">The noise; null where none is known.</param>
    /// <param name="subtracted">
    /// Voltage that was taken out of reference and covered sweeps, and is taken out of plates that carry phase; empty where none was.
    /// </param>
    public static SteadyLeakage? Of(AlignedCampaign campaign, NoiseFloor? floor, ImmutableArray<Complex> subtracted)
    {
        double[][] plates = [.. SetAsideSweeps.OnGrid(campaign, SweepRole.Plate).Select(s => Without(s, subtracted))];
        if (plates.Length == 0)
        {
            return null;
        }

        double[] mean = [.. Enumerable.Range(0, campaign.Grid.Count).Select(f => plates.Average(p => p[f]))];
        double told = TellableOverFloor(floor, plates.Length, campaign.Grid.Count);
        return new SteadyLeakage
        {
            Source = LeakageSource.Plate,
            LevelDb = SteadyLeakage.Filled([.. mean.Select((level, f) => At(level, f, floor, told))]),
            LimitDb = [.. mean.Select((_, f) => Limit(mean, f, floor, plates.Length))],
        };
    }

    private static double[] Without(SetAsideSweep plate, ImmutableArray<Complex> subtracted) =>
        subtracted.IsEmpty || plate.Phases.IsEmpty ? [.. plate.Levels]
            : [.. plate.Levels.Select((level, f) => Voltages.LevelDb(Voltages.Of(level, plate.Phases[f]) - subtracted[f]))];

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
        return floor.Ambient[f] || over < toldDb ? double.NegativeInfinity : PowerLeft(plate, over);
    }

    // One-sided 97.5 % limit of its mean over neighbouring frequencies: what chance takes from the plates, the floor's own error,
    // and how far it may have moved.
    private static double Limit(double[] plate, int f, NoiseFloor? floor, int sweeps)
    {
        if (floor is null)
        {
            return plate[f];
        }

        int start = Math.Max(0, f - Neighbours);
        int[] beside = [.. Enumerable.Range(start, Math.Min(plate.Length, f + Neighbours + 1) - start)];
        double quantile = Confidence.NinetyFive.TwoSidedQuantile;
        double chance = floor.Noise.Max(n => n.CriticalRise(sweeps * beside.Length, quantile));
        double error = StudentQuantile.Of(quantile).At(floor.DegreesOfFreedom[f]) * floor.StandardErrorDb[f];
        double shown = Math.Max(0, beside.Average(i => plate[i] - floor.LevelDb[i]));
        double over = shown + Math.Sqrt((chance * chance) + (error * error)) + floor.HalfWidthDb;
        return PowerLeft(floor.LevelDb[f] + over, over);
    }

    private static double PowerLeft(double level, double over) => level + (10 * Math.Log10(1 - Math.Pow(10, -over / 10)));
}
