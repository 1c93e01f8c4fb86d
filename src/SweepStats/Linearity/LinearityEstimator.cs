using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>
/// Compares sweeps taken with nothing in the way at several source levels, linearity and reference sweeps, with the steps of the
/// source.
/// </summary>
/// <remarks>
/// Overload grows with the level, so the upper half of the frequencies is looked at, of those at which the lowest setting is
/// clear of the noise; where that shows nothing, the strongest tenth, at a level that hardly ever speaks by chance. Each sweep
/// counts once, with its mean over these frequencies: offsets that a sweep shares over frequency are not averaged away. Limits by
/// Welch's t.
/// </remarks>
internal static class LinearityEstimator
{
    private static readonly Confidence Level = Confidence.NinetyFive;

    // For a second look at the same sweeps.
    private static readonly Confidence Strict = new(0.999);

    /// <summary>
    /// The curve; null where fewer than two levels were taken on the common grid, or none is clear of the noise.
    /// </summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="campaignDbm">Source level stated for the whole campaign in dBm; null where none is.</param>
    public static LinearityCurve? Of(AlignedCampaign campaign, NoiseFloor? floor, double? campaignDbm = null)
    {
        ImmutableArray<SourceLevel> levels = SourceLevel.Of(campaign, campaignDbm);
        SourceLevel? reference = levels.FirstOrDefault(level => level.IsReference);
        if (levels.All(level => level.IsReference) || levels[^1].Dbm <= levels[0].Dbm)
        {
            return null;
        }

        // One a level; linearity sweeps go before reference sweeps of the same.
        SourceLevel[] steps = [.. levels.DistinctBy(level => level.Dbm)];
        var places = new LinearityPlaces(steps[0], steps[^1], floor);
        return !places.Any ? null : Marked(new Compared(steps, reference, places, floor));
    }

    private static LinearityCurve Marked(Compared seen)
    {
        LinearityStep[] steps = [.. seen.Steps.Skip(1).Select(high => Step(seen.Lowest, high, seen.Places))];
        int own = Array.FindIndex(seen.Steps, level => ReferenceEquals(level, seen.Reference)) - 1;
        LinearityStep? toReference = own >= 0 ? steps[own]
            : seen.Reference is { } high && high.Dbm > seen.Lowest.Dbm
            ? Step(seen.Lowest, high, new LinearityPlaces(seen.Lowest, high, seen.Floor)) : null;
        return new LinearityCurve
        {
            Steps = [.. steps],
            Confidence = Level,
            ReferenceDbm = seen.Reference?.Dbm,
            StepsHoldReference = seen.Steps.Any(level => level.IsReference),
            Reference = toReference,
            OverloadedFromDb = Onset(seen, steps, toReference),
        };
    }

    // The reference sweeps themselves tell best. Else a receiver that falls short at a level no higher than theirs does so at
    // theirs as well.
    private static double? Onset(Compared seen, LinearityStep[] steps, LinearityStep? toReference)
    {
        SourceLevel? high = toReference is { IsShort: true } ? seen.Reference
            : seen.Steps.Skip(1).Where((level, i) => steps[i].IsShort && level.Dbm <= seen.Reference?.Dbm).LastOrDefault();
        if (high is null)
        {
            return null;
        }

        int[] rising = new LinearityPlaces(seen.Lowest, high, seen.Floor).Rising;
        return OverloadOnset.Of(seen.Lowest, high, rising, Tolerance(seen.Reference!, rising));
    }

    // Half the standard error of the difference of the reference and a covered level that repeats as well: an interval that is
    // off by less still holds in 92 of 100.
    private static double Tolerance(SourceLevel reference, int[] places) =>
        Math.Min(LinearityStep.WorthTellingDb, Math.Sqrt(2 * reference.ErrorSquare(places))) / 2;

    private static LinearityStep Step(SourceLevel low, SourceLevel high, LinearityPlaces places)
    {
        LinearityStep half = Over(low, high, places.UpperHalf, Level);
        return !half.IsShort && Over(low, high, places.Strongest, Strict) is { IsShort: true, Interval: not null }
            ? Over(low, high, places.Strongest, Level) : half;
    }

    private static LinearityStep Over(SourceLevel low, SourceLevel high, int[] places, Confidence level)
    {
        double[] lows = Means(low, places);
        double[] highs = Means(high, places);
        double shortfall = high.Dbm - low.Dbm - (Sample.Mean(highs) - Sample.Mean(lows));
        Interval? interval = lows.Length < 2 || highs.Length < 2 ? null : Limits(shortfall, lows, highs, level);
        return new LinearityStep(low.Dbm, high.Dbm, shortfall, interval, lows.Length, highs.Length, places.Length);
    }

    private static double[] Means(SourceLevel level, int[] places) =>
        [.. level.Sweeps.Select(s => Sample.Mean([.. places.Select(f => s[f])]))];

    private static Interval Limits(double shortfall, double[] lows, double[] highs, Confidence level)
    {
        ReadOnlySpan<Contribution> parts = [Mean(lows), Mean(highs)];
        double freedom = WelchSatterthwaite.DegreesOfFreedom(parts);
        double half = StudentT.Quantile(level.TwoSidedQuantile, freedom) * WelchSatterthwaite.Combined(parts);
        return new Interval(shortfall - half, shortfall + half);
    }

    private static Contribution Mean(double[] values) =>
        new(Sample.StandardDeviation(values) / Math.Sqrt(values.Length), values.Length - 1);

    /// <summary>What is compared: the source levels, one after another, and the reference's own.</summary>
    private sealed record Compared(SourceLevel[] Steps, SourceLevel? Reference, LinearityPlaces Places, NoiseFloor? Floor)
    {
        /// <summary>The lowest source level.</summary>
        public SourceLevel Lowest => Steps[0];
    }
}
