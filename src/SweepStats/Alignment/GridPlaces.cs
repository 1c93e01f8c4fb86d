using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds the frequencies of one grid among those of another.</summary>
internal static class GridPlaces
{
    /// <summary>The places of frequencies that the grid has, all of them.</summary>
    public static ImmutableArray<GridPlace> Shared(FrequencyGrid common, FrequencyGrid grid) =>
        [.. CommonGrid.Places(common, grid).Select(GridPlace.At)];

    /// <summary>The place of a frequency; null outside the grid.</summary>
    /// <param name="grid">The readings' frequencies.</param>
    /// <param name="hertz">The frequency.</param>
    /// <param name="nearest">
    /// The nearest reading is taken as it is: a mean of two readings of noise scatters less than one, and the floor is known by
    /// its scatter.
    /// </param>
    public static GridPlace? Of(FrequencyGrid grid, double hertz, bool nearest)
    {
        if (CommonGrid.IndexOf(grid, hertz) is >= 0 and int own)
        {
            return GridPlace.At(own);
        }

        int above = ~grid.Hertz.BinarySearch(hertz);
        return nearest ? Nearest(grid, hertz)
            : above == 0 || above == grid.Count ? null
            : new GridPlace(above - 1, (hertz - grid.Hertz[above - 1]) / (grid.Hertz[above] - grid.Hertz[above - 1]), false);
    }

    private static GridPlace? Nearest(FrequencyGrid grid, double hertz)
    {
        int near = grid.NearestPoint(new Hertz(hertz));
        double away = Math.Abs(grid.Hertz[near] - hertz);
        bool inside = hertz >= grid.Hertz[0] && hertz <= grid.Hertz[^1];
        bool beside = grid.Count > 1 && away <= Math.Abs(grid.Hertz[near] - grid.Hertz[near == 0 ? 1 : near - 1]) / 2;
        return inside || beside ? new GridPlace(near, 0, false) : null;
    }
}
