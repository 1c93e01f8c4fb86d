namespace SweepStats.Alignment;

/// <summary>Finds the step in which a receiver shows its levels.</summary>
/// <remarks>
/// Two signs, the coarser counts. Levels that are all whole multiples of a usual step: a steady level on a coarse display looks
/// like one without scatter, and nothing else would tell it from a perfect one. And levels that repeat, all of them whole
/// multiples of their least distance apart, which also finds steps that an offset has moved off the usual grid. Sweeps that
/// agree everywhere count once: copies repeat their levels on any display.
/// </remarks>
internal static class DisplayStep
{
    // Fewer levels may share a grid by chance: a dozen hand-typed tenths are all whole once in 10^12.
    private const int FewestLevels = 12;
    private const int FewestForGaps = 50;

    /// <summary>Levels that differ by no more in dB are the same: readers' rounding must not pass for a step.</summary>
    public const double Same = 1e-6;

    /// <summary>Whether two levels in dB are shown alike.</summary>
    public static bool IsSame(double a, double b) => Math.Abs(a - b) <= Same;

    // Of all distances between neighbouring levels so many are whole multiples of the least: a clipped sweep has one level that
    // repeats and no step.
    private const double NearlyAll = 0.98;

    // How far off a multiple may lie, in steps.
    private const double OffStep = 0.01;

    // One level, or two, lie on any grid.
    private const int FewestDifferent = 3;

    /// <summary>
    /// Standard deviation of what rounding to the step takes away, q/√12, in dB; 0 where no step can be told.
    /// </summary>
    /// <remarks>
    /// Repeats do not average it away: a steady level is rounded the same way every time. Source: JCGM 100:2008, F.2.2.1.
    /// </remarks>
    public static double Deviation(SweepBlock block) => Of(block) / Math.Sqrt(12);

    /// <summary>The step in dB; 0 where none can be told.</summary>
    /// <remarks>
    /// A level that never changes counts as rounded to the coarsest step that it is a multiple of: a bound on the rounding, not
    /// a sign of a step (<see cref="Shows"/>).
    /// </remarks>
    public static double Of(SweepBlock block) => block.StepDb;

    /// <summary>The same, found anew.</summary>
    internal static double Found(SweepBlock block)
    {
        int[] different = Different(block);
        int count = different.Length * block.PointCount;
        double usual = block.UsualSteps.Coarsest;
        double onGrid = count >= FewestLevels || AllRepeat(block) ? usual : 0;
        return count < FewestForGaps || (usual > 0 && LevelGaps.Hold(usual, block, different)) ? onGrid
            : Math.Max(onGrid, LeastGap(Levels(block, different)));
    }

    /// <summary>
    /// Whether the levels of a block come in steps for all to see: several different ones, with a step between them.
    /// </summary>
    public static bool Shows(SweepBlock block) => Varies(block) && Of(block) > 0;

    /// <summary>Whether a block has several different levels.</summary>
    private static bool Varies(SweepBlock block)
    {
        HashSet<double> different = [];
        for (int j = 0; j < block.SweepCount; j++)
        {
            foreach (double level in block[j])
            {
                different.Add(level);
                if (different.Count == FewestDifferent)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>
    /// The step in dB that those of some blocks share whose levels vary; 0 where they share none, null where none varies.
    /// </summary>
    public static double? OfVarying(IEnumerable<SweepBlock> blocks)
    {
        SweepBlock[] varying = [.. blocks.Where(Varies)];
        return varying.Length == 0 ? null : Shared(varying);
    }

    /// <summary>
    /// The coarsest usual step in dB that all levels of some blocks are whole multiples of; 0 where there is none.
    /// </summary>
    public static double Shared(IEnumerable<SweepBlock> blocks) =>
        blocks.Aggregate(UsualSteps.All, (steps, block) => steps.And(block.UsualSteps)).Coarsest;

    /// <summary>The coarsest usual step in dB that all levels are whole multiples of; 0 where there is none.</summary>
    public static double Shared(IEnumerable<double> levels) => UsualSteps.Of([.. levels]).Coarsest;

    // Sweeps that agree everywhere with none before them.
    private static int[] Different(SweepBlock block)
    {
        List<int> different = [];
        for (int j = 0; j < block.SweepCount; j++)
        {
            if (!different.Exists(i => block[i].SequenceEqual(block[j])))
            {
                different.Add(j);
            }
        }

        return [.. different];
    }

    private static double[] Levels(SweepBlock block, int[] sweeps)
    {
        var levels = new double[sweeps.Length * block.PointCount];
        for (int i = 0; i < sweeps.Length; i++)
        {
            block[sweeps[i]].CopyTo(levels.AsSpan(i * block.PointCount));
        }

        return levels;
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

    private static double LeastGap(double[] levels)
    {
        double[] gaps = LevelGaps.Of(levels);
        double step = gaps.DefaultIfEmpty().Min();
        return step > 0 && gaps.Count(g => IsNearMultiple(g, step)) >= NearlyAll * gaps.Length ? step : 0;
    }

    private static bool IsNearMultiple(double gap, double step)
    {
        double steps = gap / step;
        return Math.Abs(steps - Math.Round(steps)) <= OffStep;
    }
}
