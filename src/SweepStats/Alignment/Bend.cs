using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>How far a level on the straight line between two readings may be off the true curve.</summary>
/// <remarks>
/// The error of linear interpolation is (x − a)(b − x)·f″/2 between readings at a and b; the second divided difference of three
/// neighbouring readings is f″/2 up to third order. The largest of the four round about counts, twice: a ripple with four
/// readings and more a period stays below that. Noise in the readings makes it larger, never smaller on average. A ripple with
/// fewer readings a period cannot be seen. Levels in dB, frequencies in Hz. Source: the error term of Newton's form, any textbook
/// of numerical analysis (from memory).
/// </remarks>
internal static class Bend
{
    private const double Safety = 2;

    /// <summary>The bound in dB at a place; 0 at a reading, infinite with fewer than three readings.</summary>
    /// <param name="grid">Frequencies of the readings.</param>
    /// <param name="levels">Mean levels at them.</param>
    /// <param name="place">Where the frequency lies.</param>
    public static double BoundDb(FrequencyGrid grid, ReadOnlySpan<double> levels, GridPlace place)
    {
        if (place.Share == 0)
        {
            return 0;
        }

        if (grid.Count < 3)
        {
            return double.PositiveInfinity;
        }

        double largest = 0;
        for (int middle = Math.Max(1, place.Below - 1); middle <= Math.Min(grid.Count - 2, place.Below + 2); middle++)
        {
            largest = Math.Max(largest, Math.Abs(DividedDifference(grid.Hertz, levels, middle)));
        }

        double step = grid.Hertz[place.Below + 1] - grid.Hertz[place.Below];
        return Safety * largest * place.Share * (1 - place.Share) * step * step;
    }

    private static double DividedDifference(ReadOnlySpan<double> hertz, ReadOnlySpan<double> levels, int middle)
    {
        double below = (levels[middle] - levels[middle - 1]) / (hertz[middle] - hertz[middle - 1]);
        double above = (levels[middle + 1] - levels[middle]) / (hertz[middle + 1] - hertz[middle]);
        return (above - below) / (hertz[middle + 1] - hertz[middle - 1]);
    }
}
