using System.Collections.Immutable;
using SweepStats.Alignment;
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
    // Below twice the noise it cannot be told from it with few sweeps.
    private const double OverFloorDb = 3;

    /// <summary>Leakage in dB on the campaign's scale at each frequency; minus infinity where none shows. Empty where no plate sweep lies on the common grid.</summary>
    public static ImmutableArray<double> Of(Evidence seen)
    {
        List<double[]> plates = [.. SetAsideSweeps.OnGrid(seen.Campaign, SweepRole.Plate).Select(s => s.Levels)];
        return plates.Count == 0 ? [] : [.. Enumerable.Range(0, seen.Campaign.Grid.Count).Select(f => At(plates.Average(p => p[f]), f, seen))];
    }

    /// <summary>How much higher and how much lower than a level the signal may be that stands behind it; infinitely lower where the leakage alone could make the level.</summary>
    public static (double Higher, double Lower) Bounds(double overLeakageDb)
    {
        VoltageSum sum = VoltageSum.Apart(new Decibels(overLeakageDb));
        return (sum.High.Value, overLeakageDb > 0 ? -sum.Low.Value : double.PositiveInfinity);
    }

    private static double At(double plate, int f, Evidence seen)
    {
        if (seen.Floor is not { } floor)
        {
            return plate;
        }

        double over = plate - floor.LevelDb[f];
        return floor.Ambient[f] || over < OverFloorDb ? double.NegativeInfinity : plate + (10 * Math.Log10(1 - Math.Pow(10, -over / 10)));
    }
}
