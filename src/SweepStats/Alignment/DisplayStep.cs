namespace SweepStats.Alignment;

/// <summary>Finds the step in which a receiver shows its levels.</summary>
internal static class DisplayStep
{
    private const int FewestLevels = 50;

    /// <summary>Standard deviation of what rounding to the step takes away, q/√12, in dB; 0 where levels do not repeat, so that no step can be told.</summary>
    /// <remarks>Repeats do not average it away: a steady level is rounded the same way every time. Source: JCGM 100:2008, F.2.2.1.</remarks>
    public static double Deviation(SweepBlock block)
    {
        var levels = new double[block.SweepCount * block.PointCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            block[j].CopyTo(levels.AsSpan(j * block.PointCount));
        }

        if (levels.Length < FewestLevels)
        {
            return 0;
        }

        Array.Sort(levels);
        int different = 1;
        double step = double.PositiveInfinity;
        for (int i = 1; i < levels.Length; i++)
        {
            // Readers' rounding must not pass for a step.
            double gap = levels[i] - levels[i - 1];
            if (gap > 1e-6)
            {
                different++;
                step = Math.Min(step, gap);
            }
        }

        return different * 2 <= levels.Length && double.IsFinite(step) ? step / Math.Sqrt(12) : 0;
    }
}
