using SweepStats.Quantities;

namespace SweepStats.Sweeps;

/// <summary>Where a grid leaves out so much between two points that nobody can say what lies there.</summary>
/// <remarks>
/// More than an octave to the next point, or more than ten times the usual step both in Hz and in ratio. The wide ratios at the
/// low end of an even sweep, whose steps in Hz are as wide as all others, are none. Judgement, no source.
/// </remarks>
public static class FrequencyGaps
{
    private const double Octave = 2, TimesUsual = 10, AsUsual = 1.5;
    private const int FewestOfSweep = 10;

    /// <summary>The gaps, each from the point below to the point above, in rising order.</summary>
    /// <param name="grid">The frequencies.</param>
    public static ImmutableArray<FrequencyBand> Of(FrequencyGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        // 0 Hz has no ratio to the next.
        int first = grid.Hertz[0] == 0 ? 1 : 0;
        if (grid.Count - first < 2)
        {
            return [];
        }

        Step[] steps =
            [.. Enumerable.Range(first, grid.Count - first - 1).Select(i => new Step(grid[i].Value, grid[i + 1].Value))];
        double usualHertz = Middle(steps.Select(s => s.Hertz)), usualRatio = Middle(steps.Select(s => s.LogRatio));
        bool IsGap(Step s) => s.LogRatio > Math.Log(Octave) ? steps.Length < FewestOfSweep || s.Hertz > AsUsual * usualHertz
            : s.Hertz > TimesUsual * usualHertz && s.LogRatio > TimesUsual * usualRatio;
        return [.. steps.Where(IsGap).Select(s => new FrequencyBand(new Hertz(s.From), new Hertz(s.To)))];
    }

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private readonly record struct Step(double From, double To)
    {
        /// <summary>Width in Hz.</summary>
        public double Hertz => To - From;

        /// <summary>Natural logarithm of the ratio of its ends.</summary>
        public double LogRatio => Math.Log(To / From);
    }
}
