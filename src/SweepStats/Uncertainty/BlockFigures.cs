using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>Figures of one block of trials, from whose scatter between blocks their own error is known.</summary>
internal readonly record struct BlockFigures(double Mean, double Deviation, double Low, double High)
{
    /// <summary>Figures of a block; mean and deviation are not numbers where a trial is infinite.</summary>
    public static BlockFigures Of(double[] values, Confidence confidence)
    {
        double[] sorted = [.. values];
        Ascending.Sort(sorted);
        Interval interval = CoverageIntervals.Symmetric(sorted, confidence);
        bool finite = double.IsFinite(sorted[0]) && double.IsFinite(sorted[^1]);
        return new BlockFigures(finite ? Sample.Mean(values) : double.NaN, finite ? Sample.StandardDeviation(values) : double.NaN,
            interval.Low, interval.High);
    }

    /// <summary>
    /// Twice the standard error of the least certain of the figures, averaged over the blocks; infinite where one is infinite in
    /// some blocks only.
    /// </summary>
    /// <param name="blocks">At least two.</param>
    /// <param name="endsOnly">Whether mean and standard deviation may move.</param>
    public static double Spread(IReadOnlyList<BlockFigures> blocks, bool endsOnly)
    {
        double ends = Math.Max(Twice(blocks, b => b.Low), Twice(blocks, b => b.High));
        return endsOnly ? ends : Math.Max(ends, Math.Max(Twice(blocks, b => b.Mean), Twice(blocks, b => b.Deviation)));
    }

    private static double Twice(IReadOnlyList<BlockFigures> blocks, Func<BlockFigures, double> figure)
    {
        double[] values = [.. blocks.Select(figure)];
        return Array.TrueForAll(values, v => v == values[0]) ? 0
            : Array.TrueForAll(values, double.IsFinite) ? 2 * Sample.StandardDeviation(values) / Math.Sqrt(values.Length)
            : double.PositiveInfinity;
    }
}
