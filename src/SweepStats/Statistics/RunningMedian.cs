namespace SweepStats.Statistics;

/// <summary>Median over a window that slides along a row of numbers.</summary>
public static class RunningMedian
{
    /// <summary>
    /// For each value the median of it and its neighbours within <paramref name="halfWidth"/>; the window is cut off at the ends.
    /// </summary>
    /// <remarks>Keeps monotone steps where they are, unlike a running mean. Assumes finite numbers.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative.</exception>
    public static double[] Of(ReadOnlySpan<double> values, int halfWidth)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(halfWidth);
        var medians = new double[values.Length];
        List<double> window = new((2 * halfWidth) + 2);
        for (int i = -halfWidth; i < values.Length; i++)
        {
            int entering = i + halfWidth;
            if (entering < values.Length)
            {
                int place = window.BinarySearch(values[entering]);
                window.Insert(place < 0 ? ~place : place, values[entering]);
            }

            int leaving = i - halfWidth - 1;
            if (leaving >= 0)
            {
                window.RemoveAt(window.BinarySearch(values[leaving]));
            }

            if (i >= 0)
            {
                int middle = window.Count / 2;
                medians[i] = window.Count % 2 == 1 ? window[middle] : (window[middle - 1] + window[middle]) / 2;
            }
        }

        return medians;
    }
}
