using SweepStats.Statistics;

namespace SweepStats.Alignment;

/// <summary>Distances in dB between levels that are neighbours in order; those that are the same have none.</summary>
internal static class LevelGaps
{
    // Beyond so many places a level, putting the levels in order costs less than looking at all places.
    private const int MostPlaces = 8;

    /// <summary>The distances, from the lowest level upwards.</summary>
    /// <param name="levels">At least one; their order may change.</param>
    /// <param name="step">A step that all of them are multiples of; 0 where none is known.</param>
    public static List<double> Of(double[] levels, double step) => (step > 0 ? OfPlaces(levels, step) : null) ?? OfOrdered(levels);

    // Multiples of a step have their place in the order by themselves. Null where levels of one place differ, if only by rounding.
    private static List<double>? OfPlaces(double[] levels, double step)
    {
        (double lowest, double highest) = Extremes.Of(levels);
        double first = Math.Round(lowest / step), count = Math.Round(highest / step) - first + 1;
        if (count > (double)MostPlaces * levels.Length)
        {
            return null;
        }

        var places = new double[(int)count];
        Array.Fill(places, double.NaN);
        foreach (double level in levels)
        {
            // Within the count by construction: no need to ask for an overflow.
            ref double held = ref places[unchecked((int)(Math.Round(level / step) - first))];
            if (held != level && !double.IsNaN(held))
            {
                return null;
            }

            held = level;
        }

        return OfOrdered(Array.FindAll(places, held => !double.IsNaN(held)), isOrdered: true);
    }

    private static List<double> OfOrdered(double[] levels, bool isOrdered = false)
    {
        if (!isOrdered)
        {
            Ascending.Sort(levels);
        }

        List<double> gaps = [];
        for (int i = 1; i < levels.Length; i++)
        {
            double gap = levels[i] - levels[i - 1];
            if (gap > DisplayStep.Same)
            {
                gaps.Add(gap);
            }
        }

        return gaps;
    }
}
