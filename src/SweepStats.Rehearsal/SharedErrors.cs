using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Rehearsal;

/// <summary>
/// Errors that no repeat shows, since all sweeps of a role share them; drawn anew at every frequency from the plan's
/// distributions.
/// </summary>
/// <remarks>They act on the level of the signal, as mismatch, cable loss and the source do, not on the noise.</remarks>
internal sealed class SharedErrors
{
    private readonly double[] _reference;
    private readonly double[] _covered;
    private readonly Dictionary<int, double[]> _placements = [];
    private readonly RehearsalPlan _plan;

    /// <summary>Draws each stated error at every frequency; one that both readings have in common is drawn once.</summary>
    public SharedErrors(RehearsalPlan plan, FrequencyGrid grid)
    {
        _plan = plan;
        _reference = new double[grid.Count];
        _covered = new double[grid.Count];
        for (int i = 0; i < plan.SystematicErrors.Length; i++)
        {
            UncertaintyEntry entry = plan.SystematicErrors[i];
            RandomSource random = DrawStreams.Systematic(plan.Seed, i);
            for (int f = 0; f < grid.Count; f++)
            {
                double first = entry.Spread.Draw(random);
                _reference[f] += entry.ActsOn != ErrorActsOn.Covered ? first : 0;
                _covered[f] += entry.ActsOn == ErrorActsOn.Covered || entry.Common ? first
                    : entry.ActsOn == ErrorActsOn.Both ? entry.Spread.Draw(random) : 0;
            }
        }
    }

    /// <summary>Error in dB of the signal's level at a point of a sweep.</summary>
    public double Db(PlannedSweep sweep, int f) => sweep.Role switch
    {
        SweepRole.Reference => _reference[f],
        SweepRole.Covered => _covered[f] + (_plan.PlacementScatterDb == 0 ? 0
            : Rehearser.Spread(_plan, sweep.Behind!.Name.Lot) * Placement(sweep.PlacementNumber)[f]),
        _ => 0,
    };

    private double[] Placement(int number)
    {
        if (!_placements.TryGetValue(number, out double[]? shape))
        {
            RandomSource random = DrawStreams.PlacementShape(_plan.Seed, number);
            _placements.Add(number, shape = [.. _covered.Select(_ => _plan.PlacementScatterDb * random.Normal())]);
        }

        return shape;
    }
}
