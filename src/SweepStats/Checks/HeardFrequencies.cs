using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>Frequencies at which a specimen rises over the floor, and whether the source may be what is heard there.</summary>
/// <remarks>
/// What is sent comes through over stretches of the band, and what a cloth takes off changes little from one frequency to the
/// next. A transmitter stands at a frequency or two with the floor on either side; many side by side reach levels that have
/// nothing to do with the reference. A broad one that is flat, beside a reference that is flat too, cannot be told.
/// </remarks>
/// <param name="Over">Frequencies at which it rises over the floor.</param>
/// <param name="Heard">At which of all it does so, and not alone.</param>
/// <param name="FollowReference">Whether those follow the reference; null where too few lie side by side.</param>
internal sealed record HeardFrequencies(int Over, ImmutableArray<bool> Heard, bool? FollowReference)
{
    /// <summary>
    /// Four times the power of the floor: as much as noise from outside brings that was not there while the floor was taken
    /// (judgement, no source).
    /// </summary>
    public const double RiseDb = 6;

    // Two side by side are one transmitter between them (judgement, no source).
    private const int ShortestStretch = 3;

    // Where it is heard at half of the band the transmitters would be many (judgement, no source).
    private const double FewOfAll = 0.5;

    // What a cloth takes off, from one frequency to the next, in the middle; or less than the covered levels themselves move
    // (judgement, no source).
    private const double SmoothDb = 2, ShareOfCovered = 0.7;
    private const int FewestSteps = 5;

    /// <summary>Frequencies in all.</summary>
    public int Points => Heard.Length;

    /// <summary>Those at which it is heard.</summary>
    public int InStretches => Heard.Count(h => h);

    /// <summary>Whether they are so few that it takes the reference's shape to show that they are no transmitters.</summary>
    public bool AreFew => Over < FewOfAll * Points;

    /// <summary>The frequencies at which one specimen is heard.</summary>
    /// <param name="curve">The specimen.</param>
    /// <param name="floor">The floor.</param>
    public static HeardFrequencies Of(ShieldingCurve curve, NoiseFloor floor)
    {
        double[] rise = RisesDb(curve, floor);
        bool[] over = [.. rise.Select(r => r >= RiseDb)];
        bool[] kept = rise.Length < FloorLikeness.FewestPoints ? over : WithoutLoners(over, floor);
        return new HeardFrequencies(over.Count(o => o), [.. kept], DoFollow(curve, kept));
    }

    /// <summary>How far one specimen lies over the floor at each frequency, in dB.</summary>
    public static double[] RisesDb(ShieldingCurve curve, NoiseFloor floor) =>
        [.. curve.Readings.CoveredDb.ToArray().Select((level, f) => level - floor.LevelDb[f])];

    // Where the floor holds a transmitter itself nothing tells whether a stretch goes on.
    private static bool[] WithoutLoners(bool[] over, NoiseFloor floor)
    {
        var kept = new bool[over.Length];
        for (int start = 0, end; start < over.Length; start = end + 1)
        {
            for (end = start; end < over.Length && (over[end] || floor.Ambient[end]);)
            {
                end++;
            }

            if (over.AsSpan(start, end - start).Count(true) >= ShortestStretch)
            {
                over.AsSpan(start, end - start).CopyTo(kept.AsSpan(start));
            }
        }

        return kept;
    }

    private static bool? DoFollow(ShieldingCurve curve, bool[] heard)
    {
        double[] covered = curve.Readings.CoveredDb.ToArray(), reference = curve.Readings.ReferenceDb.ToArray();
        int[] steps = [.. Enumerable.Range(0, heard.Length - 1).Where(f => heard[f] && heard[f + 1])];
        if (steps.Length < FewestSteps)
        {
            return null;
        }

        double moved = Sample.Median([.. steps.Select(f => Math.Abs(covered[f + 1] - covered[f]))]);
        double takenOff = Sample.Median(
            [.. steps.Select(f => Math.Abs(reference[f + 1] - covered[f + 1] - reference[f] + covered[f]))]);
        return takenOff <= SmoothDb || takenOff <= ShareOfCovered * moved;
    }
}
