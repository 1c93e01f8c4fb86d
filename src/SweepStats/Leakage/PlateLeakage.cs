using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Sweeps;

namespace SweepStats.Leakage;

/// <summary>What comes round the specimen: the level behind a solid metal plate in its place, less the noise.</summary>
/// <remarks>
/// A plate lets nothing through, so what is read beyond the noise took another way. Where nothing shows beyond the noise, as much
/// may come round as would not show: that stands in the intervals all the same (<see cref="SteadyLeakage.MayBe"/>).
/// </remarks>
internal static class PlateLeakage
{
    // Below twice the noise what is left of a plate's level without it is known too badly.
    private const double LeastOverFloorDb = 3;

    // Where something transmits a plate shows no leakage. It is taken to be no larger than at the frequencies within so many to
    // either side.
    private const int Neighbours = 4;

    // Chance that a plate sweep through which nothing comes shows leakage somewhere, all frequencies together.
    private const double FalseAlarm = 0.005;

    /// <summary>The leakage; null where no plate sweep lies on the common grid.</summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="floor">The noise; null where none is known.</param>
    /// <param name="subtracted">
    /// Voltage that was taken out of reference and covered sweeps, and is taken out of plates that carry phase; empty where none
    /// was.
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
            MayBe = MayBe(mean, floor, plates.Length),
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

    private static ImmutableArray<LeakageLevel> MayBe(double[] plate, NoiseFloor? floor, int sweeps)
    {
        if (floor is null)
        {
            return [.. plate.Select(LeakageLevel.Known)];
        }

        PlateReadings[] ways = [.. floor.Noise.Select(n => new PlateReadings(n, floor, sweeps))];
        LeakageLevel[] own = [.. plate.Select((level, f) => ways.Select(w => w.At(level, f)).MaxBy(l => l.LimitDb))];
        return [.. SteadyLeakage.Filled(own)
            .Select((level, f) => floor.Ambient[f] ? Beside(own, f, floor.Ambient) ?? level : level)];
    }

    private static LeakageLevel? Beside(LeakageLevel[] own, int f, ImmutableArray<bool> ambient)
    {
        int first = Math.Max(0, f - Neighbours), end = Math.Min(own.Length, f + Neighbours + 1);
        int[] quiet = [.. Enumerable.Range(first, end - first).Where(i => !ambient[i])];
        return quiet.Length == 0 ? null : quiet.Select(i => own[i]).MaxBy(l => l.LimitDb);
    }

    private static double PowerLeft(double level, double over) => level + (10 * Math.Log10(1 - Math.Pow(10, -over / 10)));
}
