using SweepStats.Bands;
using SweepStats.Floor;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What comes through a specimen.</summary>
/// <param name="Curve">Its shielding.</param>
/// <param name="At">Where it rises over the floor.</param>
/// <param name="MiddleDb">Median of its values and bounds in dB; not a number where there are none.</param>
/// <param name="ParallelDb">How far above the floor it runs parallel to it, in dB; null where it does not.</param>
/// <param name="ScatterDb">How far above the floor it scatters as noise does, in dB; null where it does not.</param>
/// <param name="IsBracketed">Whether a reference stands on either side of the specimens.</param>
internal sealed record HeardSpecimen(ShieldingCurve Curve, HeardFrequencies At, double MiddleDb, double? ParallelDb,
    double? ScatterDb, bool IsBracketed)
{
    // A transmitter that came after the floor was taken, or a few of them, stand clear at a part of the frequencies, and show
    // nothing of what is sent; a seam that lets through at so few reads alike (judgement, no source).
    private const double ShareHeard = 0.2;
    private const int FewestHeard = 2;

    public SpecimenName Name => Curve.Name;

    /// <summary>How far above the floor it is nothing but noise, in dB; null where that does not show.</summary>
    public double? NoiseDb => ParallelDb ?? ScatterDb;

    /// <summary>Frequencies at which something stands over the floor that is no noise, a transmitter or the source.</summary>
    public int Over => NoiseDb is null ? At.Over : 0;

    /// <summary>Whether nothing shows that the source was on.</summary>
    public bool IsSilent => IsInFloor || (!IsBracketed && At is { AreFew: true, FollowReference: false });

    /// <summary>Whether it hardly rises over the floor, but for what stands alone.</summary>
    public bool IsInFloor => NoiseDb is not null || At.InStretches < Fewest(At.Points);

    public bool IsKnown => !IsSilent && double.IsFinite(MiddleDb);

    /// <summary>
    /// Whether it is heard, but at so few frequencies that they may be transmitters: they do not follow the reference, or too
    /// few lie side by side to tell.
    /// </summary>
    public bool MayBeTransmitters => !IsSilent && At is { AreFew: true, FollowReference: not true };

    /// <summary>Whether its values and bounds reach what is asked, everywhere.</summary>
    public bool Meets(DecisionRule rule)
    {
        var limits = new OneSidedLimits(Curve);
        bool any = false;
        foreach ((int f, ShieldingReading reading) in Curve.Readings.Index())
        {
            bool? met = rule.IsMet(reading, limits.Low(f, rule.Level.Level));
            if (met == false)
            {
                return false;
            }

            any |= met == true;
        }

        return any;
    }

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
        var at = HeardFrequencies.Of(curve, floor);
        double? parallel = at.Over > 0 ? FloorLikeness.RiseDb(curve, floor) : null;
        double? Scattered() => at.Over == 0 ? null
            : NoiseScatter.RiseDb(seen, curve, seen.Campaign.Covered[place].Block, floor)
                ?? WithoutShapeDb(HeardFrequencies.RisesDb(curve, floor), seen.Doubts.Specimens[place].LostShape);
        return new HeardSpecimen(curve, at, known.Length == 0 ? double.NaN : Sample.Median(known),
            parallel, parallel is null ? Scattered() : null, seen.Timing == ReferenceTiming.BothSides);
    }

    /// <summary>
    /// Whether it lies so near the floor that it may be noise of another receiver setting, and nothing could tell.
    /// </summary>
    public static bool MayBeNoise(Evidence seen, ShieldingCurve curve, int place, NoiseFloor floor)
    {
        double[] rise = HeardFrequencies.RisesDb(curve, floor);
        return Sample.Median(rise) <= NoiseScatter.MostRiseDb
            && rise.Count(r => r >= HeardFrequencies.RiseDb) >= Fewest(rise.Length)
            && !FloorLikeness.CanTell(curve, floor)
            && !NoiseScatter.CanTell(seen, curve, seen.Campaign.Covered[place].Block, floor);
    }

    // Where sweeps neither show the reference's shape nor resemble each other, noise is all that is heard, however high it lies.
    private static double? WithoutShapeDb(double[] rise, ImmutableArray<int> lost)
    {
        HashSet<int> noise = [.. lost];
        return lost.Length > 0
            && rise.Where((r, f) => r >= HeardFrequencies.RiseDb && !noise.Contains(f)).Count() < Fewest(rise.Length)
            ? lost.Average(f => rise[f]) : null;
    }
}
