using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>What to do about a floor that lies over the covered sweeps: it is no floor of theirs.</summary>
internal static class MistakenFloor
{
    // As far as an untouched set-up moves between two roles, cables and all (judgement, no source).
    private const double AlikeDb = 3;

    private const string Again = "take the floor again with the source off and exactly the settings of the covered sweeps";

    /// <summary>Whether floor and reference read alike.</summary>
    public static bool IsReference(Evidence seen) =>
        seen.Floor is { Source: FloorSource.Measured } floor && IsReference(seen, floor);

    /// <summary>The next step.</summary>
    public static string NextStep(Evidence seen) =>
        seen.Floor is not { Source: FloorSource.Measured } floor
            ? "Take the floor again with exactly the settings of the covered sweeps, or correct the declared floor."
        : IsReference(seen, floor)
            ? "Look whether the source was on while the floor was taken: it reads like the reference. If so, " + Again + "."
        : IsOverAll(seen, floor)
            ? "Look whether floor and covered sweeps were exchanged: then give each its own role. Else " + Again + "."
        : char.ToUpperInvariant(Again[0]) + Again[1..] + ".";

    private static bool IsReference(Evidence seen, NoiseFloor floor) =>
        Math.Abs(MiddleOver(floor, seen.Campaign.Reference.Means().AsSpan())) < AlikeDb;

    // Where settings differ by so little, nobody exchanged anything.
    private static bool IsOverAll(Evidence seen, NoiseFloor floor) =>
        seen.Campaign.Covered.All(c => MiddleOver(floor, c.Block.Means().AsSpan()) > AlikeDb);

    private static double MiddleOver(NoiseFloor floor, ReadOnlySpan<double> levels)
    {
        double[] over = new double[levels.Length];
        for (int f = 0; f < over.Length; f++)
        {
            over[f] = floor.LevelDb[f] - levels[f];
        }

        return Sample.Median(over);
    }
}
