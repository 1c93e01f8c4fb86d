using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Finds the frequencies that all sweeps share.</summary>
/// <remarks>
/// Two frequencies are the same when they differ by less than a millionth of the frequency, but never by less than a twentieth
/// nor by more than a quarter of the step to the next point: exports round to kHz, and synthesisers to their own steps. Nothing
/// is interpolated here: a level between two points was never measured.
/// </remarks>
internal static class CommonGrid
{
    private const double ShareOfStep = 0.05;
    private const double MostOfStep = 0.25;
    private const double ShareOfFrequency = 1e-6;

    /// <summary>Frequencies of the first grid that all others have, within the band where one is given; null for none.</summary>
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

    /// <summary>Place of a frequency in a grid; −1 where the grid does not have it.</summary>
    public static int IndexOf(FrequencyGrid grid, double hertz)
    {
        int at = grid.Hertz.BinarySearch(hertz);
        if (at >= 0)
        {
            return at;
        }

        int above = ~at;
        if (above < grid.Count && grid.Hertz[above] - hertz <= Tolerance(grid, above))
        {
            return above;
        }

        return above > 0 && hertz - grid.Hertz[above - 1] <= Tolerance(grid, above - 1) ? above - 1 : -1;
    }

    private static double Tolerance(FrequencyGrid grid, int point)
    {
        double below = point > 0 ? grid.Hertz[point] - grid.Hertz[point - 1] : double.PositiveInfinity;
        double above = point + 1 < grid.Count ? grid.Hertz[point + 1] - grid.Hertz[point] : double.PositiveInfinity;
        double step = Math.Min(below, above);
        double rounding = ShareOfFrequency * grid.Hertz[point];
        return double.IsFinite(step) ? Math.Clamp(rounding, ShareOfStep * step, MostOfStep * step) : rounding;
    }
}
