using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What comes round the specimen: the level behind a solid metal plate in its place, less the noise.</summary>
/// <remarks>
/// A plate lets nothing through, so what is read beyond the noise took another way. It adds to the specimen's signal as a voltage of unknown phase: the signal
/// behind a level is the level and the leakage, in phase at most and against each other at least (<see cref="VoltageSum"/>).
/// </remarks>
internal static class PlateLeakage
{
    // Below twice the noise what is left of a plate's level without it is known too badly.
    private const double LeastOverFloorDb = 3;

    // Chance that a plate sweep through which nothing comes shows leakage somewhere, all frequencies together.
    private const double FalseAlarm = 0.005;

    /// <summary>Leakage in dB on the campaign's scale at each frequency; minus infinity where none shows. Empty where no plate sweep lies on the common grid.</summary>
    public static ImmutableArray<double> Of(Evidence seen)
    {
        List<double[]> plates = [.. SetAsideSweeps.OnGrid(seen.Campaign, SweepRole.Plate).Select(s => s.Levels)];
        double told = TellableOverFloor(seen, plates.Count);
        return plates.Count == 0 ? [] : [.. Enumerable.Range(0, seen.Campaign.Grid.Count).Select(f => At(plates.Average(p => p[f]), f, (seen.Floor, told)))];
    }

    /// <summary>How much higher and how much lower than a level the signal may be that stands behind it; infinitely lower where the leakage alone could make the level.</summary>
    public static (double Higher, double Lower) Bounds(double overLeakageDb)
    {
        VoltageSum sum = VoltageSum.Apart(new Decibels(overLeakageDb));
        return (sum.High.Value, overLeakageDb > 0 ? -sum.Low.Value : double.PositiveInfinity);
    }

    // Means of few sweeps of noise stand over the floor by chance: the fewer looks, the farther.
    private static double TellableOverFloor(Evidence seen, int sweeps) => seen.Floor is not { } floor || sweeps == 0
        ? LeastOverFloorDb
        : Math.Max(LeastOverFloorDb, floor.Noise.Max(n => n.CriticalRise(sweeps, 1 - (FalseAlarm / seen.Campaign.Grid.Count))));

    private static double At(double plate, int f, (NoiseFloor? Level, double ToldDb) floor)
    {
        if (floor.Level is not { } level)
        {
            return plate;
        }

        double over = plate - level.LevelDb[f];
        return level.Ambient[f] || over < floor.ToldDb ? double.NegativeInfinity : plate + (10 * Math.Log10(1 - Math.Pow(10, -over / 10)));
    }
}
