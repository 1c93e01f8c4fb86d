using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>What transmits besides the source.</summary>
internal sealed class AmbientField(RehearsalPlan plan, FrequencyGrid grid)
{
    private readonly int[] _places = [.. plan.Ambient.Select(carrier => Nearest(grid, carrier.Frequency.Value))];

    /// <summary>Power over the noise power at each frequency, in one sweep.</summary>
    public double[] In(PlannedSweep sweep)
    {
        var ratios = new double[grid.Count];
        for (int i = 0; i < _places.Length; i++)
        {
            AmbientCarrier carrier = plan.Ambient[i];
            if (carrier.Share >= 1 || DrawStreams.Ambient(plan.Seed, i, sweep.Stream).Uniform() < carrier.Share)
            {
                ratios[_places[i]] += Math.Pow(10, carrier.AboveFloor.Value / 10);
            }
        }

        return ratios;
    }

    private static int Nearest(FrequencyGrid grid, double hertz)
    {
        int nearest = 0;
        for (int f = 1; f < grid.Count; f++)
        {
            nearest = Math.Abs(grid[f].Value - hertz) < Math.Abs(grid[nearest].Value - hertz) ? f : nearest;
        }

        return nearest;
    }
}
