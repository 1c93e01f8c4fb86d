using SweepStats.Statistics;

namespace SweepStats.Alignment;

/// <summary>
/// Distances in dB between levels that are neighbours in order, where each level stands for two readings or more on average.
/// </summary>
internal static class LevelGaps
{
    /// <summary>
    /// The distances, from the lowest level upwards; levels that are the same have none. None at all where most levels stand for
    /// one reading.
    /// </summary>
    /// <param name="levels">At least one; they are put in order.</param>
    public static double[] Of(double[] levels)
    {
        Ascending.Sort(levels);
        List<double> gaps = [];
        for (int i = 1; i < levels.Length; i++)
        {
            double gap = levels[i] - levels[i - 1];
            if (gap > DisplayStep.Same)
            {
                gaps.Add(gap);
            }
        }

        return (gaps.Count + 1) * 2 <= levels.Length ? [.. gaps] : [];
    }

    /// <summary>
    /// Whether two levels lie one step apart. Among a few hundred readings there are two, unless the real step is coarser.
    /// </summary>
    /// <param name="step">A step in dB that all levels are multiples of.</param>
    /// <param name="block">The sweeps.</param>
    /// <param name="sweeps">Those of them that are looked at.</param>
    public static bool Hold(double step, SweepBlock block, int[] sweeps)
    {
        HashSet<double> places = [];
        foreach (int sweep in sweeps)
        {
            foreach (double level in block[sweep])
            {
                double place = Math.Round(level / step);
                if (places.Add(place) && (places.Contains(place - 1) || places.Contains(place + 1)))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
