using MathNet.Numerics.Distributions;
using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Clipping;

/// <summary>
/// Finds a highest level at which more readings stand to the last digit than the levels just below it let expect: the receiver
/// shows no more.
/// </summary>
/// <remarks>
/// Scatter spreads clipped readings over the frequencies round a maximum, so that few of them are neighbours; their levels are
/// still the same. Below the highest level the readings of scattered sweeps thin out, so each step of the display holds at most
/// as many as those a scatter's width below. Their mean is the Poisson mean that the readings at the top are held against.
/// Nothing is said where scatter is not several steps wide: smooth maxima of a stepped display tie too.
/// </remarks>
internal static class TiedTops
{
    /// <summary>Fewest readings at one highest level that count.</summary>
    public const int Fewest = 4;

    private const double ByChance = 1e-4;
    private const double ScatterInSteps = 5;

    // Levels that share no step carry digits enough that two agree by chance only.
    private const double UnseenStep = 1e-4;

    /// <summary>The highest level of all where it is a limit; null where it is none.</summary>
    public static double? Limit(SweepBlock block)
    {
        double top = block.HighestDb;
        int at = Enumerable.Range(0, block.SweepCount).Where(j => DisplayStep.IsSame(block.ExtremesDb(j).Highest, top))
            .Sum(j => Count(block[j], l => DisplayStep.IsSame(l, top)));
        if (at < Fewest)
        {
            return null;
        }

        double scatter = Scatter(block);
        double steps = scatter / Math.Max(DisplayStep.Of(block), UnseenStep);
        if (steps < ScatterInSteps)
        {
            return null;
        }

        int below = Enumerable.Range(0, block.SweepCount)
            .Sum(j => Count(block[j], l => !DisplayStep.IsSame(l, top) && l >= top - scatter));
        return 1 - Poisson.CDF((below + 1) / steps, at - 1) < ByChance ? top : null;
    }

    private static int Count(ReadOnlySpan<double> levels, Predicate<double> counts)
    {
        int count = 0;
        foreach (double level in levels)
        {
            count += counts(level) ? 1 : 0;
        }

        return count;
    }

    /// <summary>
    /// Standard deviation of a reading about its neighbours or repeats, in dB: about as much as clipping takes from the readings
    /// that it meets.
    /// </summary>
    /// <remarks>
    /// Of a normal variable the median of |x − median| is 0.6745 standard deviations. One sweep is held against its neighbours: x
    /// − (left + right)/2 has 3/2 of the variance.
    /// </remarks>
    public static double Scatter(SweepBlock block)
    {
        const double NormalMedian = 0.6745;
        if (block.SweepCount > 1)
        {
            double[] away = [.. Enumerable.Range(0, block.PointCount)
                .SelectMany(f => Deviations.FromMean([.. Enumerable.Range(0, block.SweepCount).Select(j => block[j][f])]))
                .Select(Math.Abs)];
            return Sample.Median(away) / NormalMedian * Math.Sqrt(block.SweepCount / (block.SweepCount - 1.0));
        }

        double[] sweep = block[0].ToArray();
        double[] beside = [.. Enumerable.Range(1, Math.Max(0, sweep.Length - 2))
            .Select(f => Math.Abs(sweep[f] - ((sweep[f - 1] + sweep[f + 1]) / 2)))];
        return beside.Length == 0 ? 0 : Sample.Median(beside) / NormalMedian / Math.Sqrt(1.5);
    }
}
