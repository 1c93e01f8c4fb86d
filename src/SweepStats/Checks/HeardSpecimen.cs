using SweepStats.Alignment;
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
    /// <summary>Share of the frequencies that is nearly all: as for a specimen that reads like nothing in its place.</summary>
    public const double NearlyAll = 0.9;

    /// <summary>
    /// Four times the power of the floor: as much as noise from outside brings that was not there while the floor was taken
    /// (judgement, no source).
    /// </summary>
    public const double RiseDb = 6;

    // A transmitter that came after the floor was taken stands clear at a few frequencies, and shows nothing of what is sent
    // (judgement, no source).
    private const double ShareHeard = 0.05;
    private const int FewestHeard = 2;

    /// <summary>How far above the floor it is nothing but noise, in dB; null where that does not show.</summary>
    public double? NoiseDb => ParallelDb ?? ScatterDb;

    /// <summary>Frequencies at which it may show the source.</summary>
    public int Clear => NoiseDb is null ? Points - Near : 0;

    public bool IsSilent => NoiseDb is not null || Near >= NearlyAll * Points;

    public bool IsUnheard => IsSilent && Clear < Fewest(Points);

    public bool IsKnown => !IsSilent && double.IsFinite(MiddleDb);

    /// <summary>The fewest frequencies that show that something was sent.</summary>
    public static int Fewest(int points) => Math.Max(FewestHeard, (int)Math.Ceiling(ShareHeard * points));

    public static HeardSpecimen Of(Evidence seen, ShieldingCurve curve, SweepBlock covered, NoiseFloor floor)
    {
        double[] known = [.. curve.Readings.ValuesDb.ToArray().Where(double.IsFinite)];
        int near = NearOf(curve.Readings.CoveredDb, floor.LevelDb.AsSpan());
        double? parallel = near < curve.Readings.Length ? FloorLikeness.RiseDb(curve, floor) : null;
        return new HeardSpecimen(curve.Name, near, curve.Readings.Length, known.Length == 0 ? double.NaN : Sample.Median(known),
            parallel, near < curve.Readings.Length && parallel is null
                ? NoiseScatter.RiseDb(seen, curve, covered, floor) : null);
    }

    private static int NearOf(ReadOnlySpan<double> coveredDb, ReadOnlySpan<double> floorDb)
    {
        int near = 0;
        for (int f = 0; f < coveredDb.Length; f++)
        {
            near += coveredDb[f] - floorDb[f] >= RiseDb ? 0 : 1;
        }

        return near;
    }
}
