using SweepStats.Floor;
using SweepStats.Shielding;

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
    /// <summary>Least fall in dB: thirty times the power (judgement, no source).</summary>
    public const double LeastFallDb = 15;

    /// <summary>Fewest frequencies of a stretch: a null of fewer may be one of the cloth (judgement, no source).</summary>
    public const int FewestPoints = 10;

    /// <summary>The silent frequencies of one specimen; null where there are none.</summary>
    /// <param name="curve">The specimen.</param>
    /// <param name="floor">The floor.</param>
    public static SilentStretch? Of(ShieldingCurve curve, NoiseFloor floor)
    {
        ImmutableArray<bool> heard = HeardFrequencies.Of(curve, floor).Heard;
        if (heard.Length < FloorLikeness.FewestPoints)
        {
            return null;
        }

        double[] rise = HeardFrequencies.RisesDb(curve, floor), reference = curve.Readings.ReferenceDb.ToArray();
        double FallDb(int heardAt, int silentAt) => heardAt < 0 || heardAt >= rise.Length ? 0
            : Math.Min(rise[heardAt] - rise[silentAt], rise[heardAt] - rise[silentAt] - reference[heardAt] + reference[silentAt]);
        List<int> silent = [];
        double most = 0;
        for (int start = 0, end; start < heard.Length; start = end + 1)
        {
            for (end = start; end < heard.Length && !heard[end];)
            {
                end++;
            }

            double fall = end == start ? 0 : Math.Max(FallDb(start - 1, start), FallDb(end, end - 1));
            if (end - start >= FewestPoints && fall >= LeastFallDb)
            {
                silent.AddRange(Enumerable.Range(start, end - start));
                most = Math.Max(most, fall);
            }
        }

        return silent.Count == 0 ? null : new SilentStretch(curve, [.. silent], most);
    }
}
