using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>How a sweep differs from its repeats, beyond chance: as a whole, by a standing wave, and at single points.</summary>
internal static class Oddity
{
    private const int Periods = 3;

    /// <summary>Deviation in dB at each frequency.</summary>
    public static double[] Of(RehearsalPlan plan, PlannedSweep sweep, FrequencyGrid grid)
    {
        var deviation = new double[grid.Count];
        foreach (OddSweep odd in plan.OddSweeps.Where(o => o.Role == sweep.Role && o.Number == sweep.Number))
        {
            double phase = 2 * Math.PI * DrawStreams.OddSweep(plan.Seed, sweep.Stream).Uniform();
            for (int f = 0; f < deviation.Length; f++)
            {
                double along = Rehearser.Along(plan.Band, grid[f].Value);
                deviation[f] += odd.OffsetDb + (odd.ShapeDb * Math.Sqrt(2) * Math.Sin((2 * Math.PI * Periods * along) + phase));
            }
        }

        if (plan.JumpShare > 0 && sweep.Role is (SweepRole.Reference or SweepRole.Covered))
        {
            RandomSource random = DrawStreams.Jumps(plan.Seed, sweep.Stream);
            for (int f = 0; f < deviation.Length; f++)
            {
                deviation[f] += random.Uniform() < plan.JumpShare ? plan.JumpDb : 0;
            }
        }

        return deviation;
    }
}
