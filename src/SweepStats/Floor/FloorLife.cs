using SweepStats.Alignment;

namespace SweepStats.Floor;

/// <summary>Whether floor sweeps show noise at all, or the bottom of a display.</summary>
/// <remarks>
/// Noise varies from reading to reading, if only by the step of the display. A floor of which more than a quarter of the readings stand at its lowest level, four times
/// as many as at any other, is cut off from below: what it shows lies above the noise, and its mean is the display's. On a coarse display a quiet floor stands at two
/// or three neighbouring levels, none of them so much fuller than the rest.
/// </remarks>
public static class FloorLife
{
    private const double Same = 1e-6;
    private const double MostAtBottom = 0.25;
    private const int TimesTheNext = 4;
    private const int FewestReadings = 12;

    /// <summary>Share of the readings that stand at the lowest level of all.</summary>
    public static double ShareAtBottom(SweepBlock floor)
    {
        double[] levels = Sorted(floor);
        return (double)levels.Count(l => l <= levels[0] + Same) / levels.Length;
    }

    /// <summary>Whether the floor is cut off from below, or does not vary at all.</summary>
    public static bool IsDead(SweepBlock floor)
    {
        double[] levels = Sorted(floor);
        int atBottom = levels.Count(l => l <= levels[0] + Same);
        if (levels.Length < FewestReadings || atBottom <= MostAtBottom * levels.Length)
        {
            return false;
        }

        int fullestOther = levels.Skip(atBottom).GroupBy(l => Math.Round(l / Same)).Select(g => g.Count()).DefaultIfEmpty(0).Max();
        return fullestOther * TimesTheNext < atBottom;
    }

    private static double[] Sorted(SweepBlock floor)
    {
        ArgumentNullException.ThrowIfNull(floor);
        double[] levels = [.. Enumerable.Range(0, floor.SweepCount).SelectMany(j => floor[j].ToArray())];
        Array.Sort(levels);
        return levels;
    }
}
