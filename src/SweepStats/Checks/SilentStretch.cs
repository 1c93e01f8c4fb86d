using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>Frequencies of one specimen at which the level has fallen into the floor at once.</summary>
/// <remarks>
/// What a cloth takes off changes little from one frequency to the next, so that a level sinks into the floor and rises out of it
/// over some of them. Where it falls at once the source stopped sending there, as amplifiers and bands of a source do, or nothing
/// was sent at all and transmitters are heard at the others. A screened room that leaks in a sharp part of the band reads so too.
/// </remarks>
/// <param name="Curve">The specimen.</param>
/// <param name="Points">The silent frequencies, rising.</param>
/// <param name="FallDb">How far the level falls from one frequency to the next, at most, in dB.</param>
internal sealed record SilentStretch(ShieldingCurve Curve, int[] Points, double FallDb)
{
    /// <summary>
    /// Least fall in dB: six times the power, and six times what the level usually changes by from one frequency to the next
    /// where it is heard; thirty times the power is told in any case (judgement, no source).
    /// </summary>
    public const double LeastFallDb = 8, UsualChanges = 6, AnywayDb = 15;

    /// <summary>Fewest frequencies of a stretch: a null of fewer may be one of the cloth (judgement, no source).</summary>
    public const int FewestPoints = 10;

    /// <summary>The silent frequencies of one specimen; null where there are none.</summary>
    /// <param name="curve">The specimen.</param>
    /// <param name="heard">At which frequencies it is heard.</param>
    /// <param name="floor">The floor.</param>
    public static SilentStretch? Of(ShieldingCurve curve, ImmutableArray<bool> heard, NoiseFloor floor)
    {
        if (heard.Length < FloorLikeness.FewestPoints)
        {
            return null;
        }

        double[] rise = HeardFrequencies.RisesDb(curve, floor), reference = curve.Readings.ReferenceDb.ToArray();
        double[] covered = curve.Readings.CoveredDb.ToArray();
        // A step of the floor, or of the reference, is none of the source's.
        double FallDb(int heardAt, int silentAt) => heardAt < 0 || heardAt >= rise.Length || floor.Ambient[silentAt] ? 0
            : Math.Min(Math.Min(rise[heardAt] - rise[silentAt], covered[heardAt] - covered[silentAt]),
                covered[heardAt] - covered[silentAt] - reference[heardAt] + reference[silentAt]);
        double limit = Math.Clamp(UsualChanges * ChangeDb(rise, heard), LeastFallDb, AnywayDb), most = 0;
        List<int> silent = [];
        for (int start = 0, end; start < heard.Length; start = end + 1)
        {
            for (end = start; end < heard.Length && !heard[end];)
            {
                end++;
            }

            double fall = end == start ? 0 : Math.Max(FallDb(start - 1, start), FallDb(end, end - 1));
            // Where something transmits in the floor too nothing is known of the source.
            int[] here = [.. Enumerable.Range(start, end - start).Where(f => !floor.Ambient[f])];
            if (here.Length >= FewestPoints && fall >= limit)
            {
                silent.AddRange(here);
                most = Math.Max(most, fall);
            }
        }

        return silent.Count == 0 ? null : new SilentStretch(curve, [.. silent], most);
    }

    // From one frequency to the next, in the middle of those that are heard.
    private static double ChangeDb(double[] rise, ImmutableArray<bool> heard)
    {
        double[] changes = [.. Enumerable.Range(0, rise.Length - 1).Where(f => heard[f] && heard[f + 1])
            .Select(f => Math.Abs(rise[f + 1] - rise[f]))];
        return changes.Length == 0 ? 0 : Sample.Median(changes);
    }
}
