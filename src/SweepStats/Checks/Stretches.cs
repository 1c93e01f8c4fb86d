using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Joins neighbouring frequencies into stretches.</summary>
internal static class Stretches
{
    /// <summary>Stretches of the frequencies that meet a condition.</summary>
    public static ImmutableArray<FrequencyBand> Where(FrequencyGrid grid, Func<int, bool> condition)
    {
        var stretches = ImmutableArray.CreateBuilder<FrequencyBand>();
        int start = -1;
        for (int f = 0; f <= grid.Count; f++)
        {
            bool inside = f < grid.Count && condition(f);
            if (inside && start < 0)
            {
                start = f;
            }
            else if (!inside && start >= 0)
            {
                stretches.Add(new FrequencyBand(grid[start], grid[f - 1]));
                start = -1;
            }
        }

        return stretches.ToImmutable();
    }
}
