using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What comes through a specimen.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="Near">Frequencies at which it hardly rises over the floor.</param>
/// <param name="Points">Frequencies in all.</param>
/// <param name="MiddleDb">Median of its values and bounds in dB; not a number where there are none.</param>
/// <param name="ParallelDb">How far above the floor it runs parallel to it, in dB; null where it does not.</param>
/// <param name="ScatterDb">How far above the floor it scatters as noise does, in dB; null where it does not.</param>
internal sealed record HeardSpecimen(
    SpecimenName Name, int Near, int Points, double MiddleDb, double? ParallelDb, double? ScatterDb)
{
    /// <summary>
    /// Four times the power of the floor: as much as noise from outside brings that was not there while the floor was taken
    /// (judgement, no source).
    /// </summary>
    public const double RiseDb = 6;

    // A transmitter that came after the floor was taken, or a few of them, stand clear at a part of the frequencies, and show
    // nothing of what is sent; a seam that lets through at so few reads alike (judgement, no source).
    private const double ShareHeard = 0.2;
    private const int FewestHeard = 2;

    /// <summary>How far above the floor it is nothing but noise, in dB; null where that does not show.</summary>
    public double? NoiseDb => ParallelDb ?? ScatterDb;

    /// <summary>Frequencies at which it may show the source.</summary>
    public int Clear => NoiseDb is null ? Points - Near : 0;

    public bool IsSilent => Clear < Fewest(Points);

    public bool IsKnown => !IsSilent && double.IsFinite(MiddleDb);

    /// <summary>The fewest frequencies that show that something was sent.</summary>
    public static int Fewest(int points) =>
        Math.Min(points, Math.Max(FewestHeard, (int)Math.Ceiling(ShareHeard * points)));

    /// <summary>What comes through one of the specimens.</summary>
    /// <param name="seen">The evidence.</param>
    /// <param name="curve">The specimen.</param>
    /// <param name="place">Its place among the covered ones.</param>
    /// <param name="floor">The floor.</param>
    public static HeardSpecimen Of(Evidence seen, ShieldingCurve curve, int place, NoiseFloor floor)
    {
        double[] known = [.. curve.Readings.ValuesDb.ToArray().Where(double.IsFinite)];
        double[] rise = Rise(curve, floor);
        int near = rise.Count(r => r < RiseDb);
        double? parallel = near < rise.Length ? FloorLikeness.RiseDb(curve, floor) : null;
        double? Scattered() => near == rise.Length ? null
            : NoiseScatter.RiseDb(seen, curve, seen.Campaign.Covered[place].Block, floor)
                ?? WithoutShapeDb(rise, seen.Doubts.Specimens[place].LostShape);
        return new HeardSpecimen(curve.Name, near, rise.Length, known.Length == 0 ? double.NaN : Sample.Median(known),
            parallel, parallel is null ? Scattered() : null);
    }

    /// <summary>
    /// Whether it lies so near the floor that it may be noise of another receiver setting, and nothing could tell.
    /// </summary>
    public static bool MayBeNoise(Evidence seen, ShieldingCurve curve, int place, NoiseFloor floor)
    {
        double[] rise = Rise(curve, floor);
        return Sample.Median(rise) <= NoiseScatter.MostRiseDb && rise.Count(r => r >= RiseDb) >= Fewest(rise.Length)
            && !FloorLikeness.CanTell(curve, floor)
            && !NoiseScatter.CanTell(seen, curve, seen.Campaign.Covered[place].Block, floor);
    }

    private static double[] Rise(ShieldingCurve curve, NoiseFloor floor) =>
        [.. curve.Readings.CoveredDb.ToArray().Select((level, f) => level - floor.LevelDb[f])];

    // Where sweeps neither show the reference's shape nor resemble each other, noise is all that is heard, however high it lies.
    private static double? WithoutShapeDb(double[] rise, ImmutableArray<int> lost)
    {
        HashSet<int> noise = [.. lost];
        return lost.Length > 0 && rise.Where((r, f) => r >= RiseDb && !noise.Contains(f)).Count() < Fewest(rise.Length)
            ? lost.Average(f => rise[f]) : null;
    }
}
