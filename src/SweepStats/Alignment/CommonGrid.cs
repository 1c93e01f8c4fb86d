using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds the frequencies that all sweeps share.</summary>
/// <remarks>
/// Two frequencies are the same when they differ by less than one part in a million: exports round. Nothing is interpolated: a level between two points
/// was never measured.
/// </remarks>
internal static class CommonGrid
{
    private const double Same = 1e-6;

    public static FrequencyGrid? Of(IReadOnlyList<FrequencyGrid> grids, FrequencyBand? band)
    {
        List<double> common = [];
        foreach (double hertz in grids[0].Hertz)
        {
            if (band is not { } limits || limits.Contains(new Hertz(hertz)))
            {
                common.Add(hertz);
            }
        }

        foreach (FrequencyGrid grid in grids.Skip(1).Distinct())
        {
            if (!grid.Equals(grids[0]))
            {
                common.RemoveAll(hertz => IndexOf(grid, hertz) < 0);
            }
        }

        return common.Count == 0 ? null : new FrequencyGrid([.. common]);
    }

    /// <summary>For each frequency of the common grid, its place in another.</summary>
    public static ImmutableArray<int> Places(FrequencyGrid common, FrequencyGrid grid)
    {
        var places = ImmutableArray.CreateBuilder<int>(common.Count);
        foreach (double hertz in common.Hertz)
        {
            places.Add(IndexOf(grid, hertz));
        }

        return places.MoveToImmutable();
    }

    private static int IndexOf(FrequencyGrid grid, double hertz)
    {
        int at = grid.Hertz.BinarySearch(hertz);
        if (at >= 0)
        {
            return at;
        }

        int above = ~at;
        if (above < grid.Count && IsSame(grid.Hertz[above], hertz))
        {
            return above;
        }

        return above > 0 && IsSame(grid.Hertz[above - 1], hertz) ? above - 1 : -1;
    }

    private static bool IsSame(double a, double b) => Math.Abs(a - b) <= Same * Math.Max(a, b);
}
