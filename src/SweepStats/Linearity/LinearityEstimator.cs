using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Linearity;

/// <summary>Compares linearity sweeps, taken with nothing in the way at several source levels, with the steps of the source.</summary>
/// <remarks>
/// Overload grows with the level, so the upper half of the frequencies is looked at, by the level at the lowest and highest source setting together; of these, those at which the lowest
/// setting stands 20 dB over the floor, where noise adds less than 0.05 dB. Each sweep counts once, with its mean over these frequencies: offsets that a sweep
/// shares over frequency are not averaged away. Limits by Welch's t.
/// </remarks>
internal static class LinearityEstimator
{
    private const double ClearOfNoiseDb = 20;
    private static readonly Confidence Level = Confidence.NinetyFive;

    /// <summary>The curve; null where fewer than two levels were taken on the common grid, or none is clear of the noise.</summary>
    public static LinearityCurve? Of(AlignedCampaign campaign, NoiseFloor? floor)
    {
        var levels = SetAsideSweeps.OnGrid(campaign, SweepRole.Linearity)
            .Where(s => s.Sweep.SourceDbm is not null)
            .GroupBy(s => s.Sweep.SourceDbm!.Value).OrderBy(g => g.Key)
            .Select(g => (Source: g.Key, Sweeps: g.Select(s => s.Levels).ToArray()))
            .ToList();
        if (levels.Count < 2)
        {
            return null;
        }

        int[] places = Places(levels[0].Sweeps, levels[^1].Sweeps, floor);
        return places.Length == 0 ? null : new LinearityCurve { Steps = [.. levels.Skip(1).Select(high => Step(levels[0], high, places))], Confidence = Level };
    }

    private static int[] Places(double[][] lowest, double[][] highest, NoiseFloor? floor)
    {
        int[] clear = [.. Enumerable.Range(0, lowest[0].Length).Where(f => floor is null || (!floor.Ambient[f] && lowest.Average(s => s[f]) > floor.LevelDb[f] + ClearOfNoiseDb))];
        // By both settings alike: chosen by one, its own scatter would look like a step.
        double[] both = [.. clear.Select(f => lowest.Average(s => s[f]) + highest.Average(s => s[f]))];
        double middle = both.Length == 0 ? 0 : Sample.Median(both);
        return [.. clear.Where((_, i) => both[i] >= middle)];
    }

    private static LinearityStep Step((double Source, double[][] Sweeps) low, (double Source, double[][] Sweeps) high, int[] places)
    {
        double[] Means(double[][] sweeps) => [.. sweeps.Select(s => Sample.Mean([.. places.Select(f => s[f])]))];
        double[] lows = Means(low.Sweeps);
        double[] highs = Means(high.Sweeps);
        double shortfall = high.Source - low.Source - (Sample.Mean(highs) - Sample.Mean(lows));
        Interval? interval = lows.Length < 2 || highs.Length < 2 ? null : Limits(shortfall, lows, highs);
        return new LinearityStep(low.Source, high.Source, shortfall, interval, lows.Length, highs.Length, places.Length);
    }

    private static Interval Limits(double shortfall, double[] lows, double[] highs)
    {
        ReadOnlySpan<Contribution> parts = [Mean(lows), Mean(highs)];
        double freedom = WelchSatterthwaite.DegreesOfFreedom(parts);
        double half = StudentT.Quantile(Level.TwoSidedQuantile, freedom) * WelchSatterthwaite.Combined(parts);
        return new Interval(shortfall - half, shortfall + half);
    }

    private static Contribution Mean(double[] values) => new(Sample.StandardDeviation(values) / Math.Sqrt(values.Length), values.Length - 1);
}
