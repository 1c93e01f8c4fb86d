namespace SweepStats.Alignment;

/// <summary>Finds the step in which a receiver shows its levels.</summary>
/// <remarks>
/// Two signs, the coarser counts. Levels that are all whole multiples of a usual step: a steady level on a coarse display looks like one without scatter, and
/// nothing else would tell it from a perfect one. And levels that repeat, with a least distance between different ones, which also finds steps that an offset
/// has moved off the usual grid.
/// </remarks>
internal static class DisplayStep
{
    // Fewer levels may share a grid by chance: a dozen hand-typed tenths are all whole once in 10^12.
    private const int FewestLevels = 12;
    private const int FewestForGaps = 50;

    // Readers' rounding must not pass for a step.
    private const double Same = 1e-6;

    // What readers' rounding may move a gap by.
    private const double OfStep = 0.05;

    private static readonly double[] UsualSteps = [1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001];

    /// <summary>Standard deviation of what rounding to the step takes away, q/√12, in dB; 0 where no step can be told.</summary>
    /// <remarks>Repeats do not average it away: a steady level is rounded the same way every time. Source: JCGM 100:2008, F.2.2.1.</remarks>
    public static double Deviation(SweepBlock block) => Of(block) / Math.Sqrt(12);

    /// <summary>The step in dB; 0 where none can be told.</summary>
    public static double Of(SweepBlock block)
    {
        var levels = new double[block.SweepCount * block.PointCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            block[j].CopyTo(levels.AsSpan(j * block.PointCount));
        }

        double onGrid = levels.Length >= FewestLevels || AllRepeat(block) ? Array.Find(UsualSteps, step => Array.TrueForAll(levels, l => IsMultiple(l, step))) : 0;
        return Math.Max(onGrid, LeastGap(levels));
    }

    private static bool IsMultiple(double level, double step)
    {
        double steps = level / step;
        return Math.Abs(steps - Math.Round(steps)) * step < Same;
    }

    // Sweeps that agree everywhere have been rounded, however few they are.
    private static bool AllRepeat(SweepBlock block)
    {
        for (int j = 1; j < block.SweepCount; j++)
        {
            if (!block[j].SequenceEqual(block[0]))
            {
                return false;
            }
        }

        return block.SweepCount > 1;
    }

    // Copies make levels repeat too; only a display leaves whole steps between them.
    private static bool AreMultiples(double[] sorted, double step)
    {
        for (int i = 1; i < sorted.Length; i++)
        {
            double steps = (sorted[i] - sorted[i - 1]) / step;
            if (Math.Abs(steps - Math.Round(steps)) > OfStep)
            {
                return false;
            }
        }

        return true;
    }

    private static double LeastGap(double[] levels)
    {
        if (levels.Length < FewestForGaps)
        {
            return 0;
        }

        Array.Sort(levels);
        int different = 1;
        double step = double.PositiveInfinity;
        for (int i = 1; i < levels.Length; i++)
        {
            double gap = levels[i] - levels[i - 1];
            if (gap > Same)
            {
                different++;
                step = Math.Min(step, gap);
            }
        }

        return different * 2 <= levels.Length && double.IsFinite(step) && AreMultiples(levels, step) ? step : 0;
    }
}
