using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>Figures of one block of trials, from whose scatter between blocks their own error is known.</summary>
internal readonly record struct BlockFigures(double Mean, double Deviation, double Low, double High)
{
    public static BlockFigures Of(double[] values, Confidence confidence)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        Interval interval = CoverageIntervals.Symmetric(sorted, confidence);
        return new BlockFigures(Sample.Mean(values), Sample.StandardDeviation(values), interval.Low, interval.High);
    }

    /// <summary>Twice the standard error of the least certain of the four figures, averaged over the blocks.</summary>
    public static double Spread(IReadOnlyList<BlockFigures> blocks)
    {
        double Twice(Func<BlockFigures, double> figure) => 2 * Sample.StandardDeviation([.. blocks.Select(figure)]) / Math.Sqrt(blocks.Count);
        return new[] { Twice(b => b.Mean), Twice(b => b.Deviation), Twice(b => b.Low), Twice(b => b.High) }.Max();
    }
}
