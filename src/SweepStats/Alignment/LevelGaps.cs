using System.Numerics;
using SweepStats.Statistics;

namespace SweepStats.Alignment;

/// <summary>Distances in dB between levels that are neighbours in order, where each level stands for two readings or more on average.</summary>
/// <remarks>
/// A usual step is a whole part of 1 dB, so a level written to it is k/m to the last digit, and k its place in the order by itself. Other levels are put in
/// order. Both ways lead to the same distances.
/// </remarks>
internal static class LevelGaps
{
    // Beyond so many places a level, putting the levels in order costs less than looking at all places.
    private const int MostPlaces = 64;

    /// <summary>The distances, from the lowest level upwards; levels that are the same have none. None at all where most levels stand for one reading.</summary>
    /// <param name="levels">At least one; their order may change.</param>
    /// <param name="step">A usual step that all of them are multiples of; 0 where none is known.</param>
    public static double[] Of(double[] levels, double step)
    {
        double[] different = (step > 0 ? Written(levels, Math.Round(1 / step)) : null) ?? Ordered(levels);
        List<double> gaps = [];
        for (int i = 1; i < different.Length; i++)
        {
            double gap = different[i] - different[i - 1];
            if (gap > DisplayStep.Same)
            {
                gaps.Add(gap);
            }
        }

        return (gaps.Count + 1) * 2 <= levels.Length ? [.. gaps] : [];
    }

    private static double[] Ordered(double[] levels)
    {
        Ascending.Sort(levels);
        return levels;
    }

    // Each different level once, in order: a mark at each place taken. Null where a level is not written to its place.
    private static double[]? Written(double[] levels, double parts)
    {
        (double lowest, double highest) = Extremes.Of(levels);
        double first = Math.Round(lowest * parts), places = Math.Round(highest * parts) - first + 1;
        if (places > (double)MostPlaces * levels.Length)
        {
            return null;
        }

        var marks = new ulong[((int)places / 64) + 1];
        int lanes = Vector<double>.Count, i = 0;
        for (; i + lanes <= levels.Length; i += lanes)
        {
            Vector<double> here = new(levels, i), taken = Vector.Round(here * parts);
            if (!Vector.EqualsAll(taken / new Vector<double>(parts), here))
            {
                return null;
            }

            for (int lane = 0; lane < lanes; lane++)
            {
                Mark(marks, taken[lane] - first);
            }
        }

        for (; i < levels.Length; i++)
        {
            double taken = Math.Round(levels[i] * parts);
            if (taken / parts != levels[i])
            {
                return null;
            }

            Mark(marks, taken - first);
        }

        int count = marks.Sum(BitOperations.PopCount);
        // More than can repeat: what they are does not matter.
        return count * 2 > levels.Length ? [] : Levels(marks, count, first, parts);
    }

    // A place lies within the marks by construction: no need to ask for an overflow.
    private static void Mark(ulong[] marks, double place)
    {
        int at = unchecked((int)place);
        marks[at >> 6] |= 1ul << (at & 63);
    }

    private static double[] Levels(ulong[] marks, int count, double first, double parts)
    {
        var levels = new double[count];
        int next = 0;
        for (int word = 0; word < marks.Length; word++)
        {
            for (ulong left = marks[word]; left != 0; left &= left - 1)
            {
                levels[next++] = (first + (64 * word) + BitOperations.TrailingZeroCount(left)) / parts;
            }
        }

        return levels;
    }
}
