using System.Numerics;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>What is lost on the way from the source to the receiver: through the specimen, and round it.</summary>
internal sealed class Way
{
    private readonly double? _leakDb;
    private readonly double[] _phases;

    /// <summary>Draws at which phase the leak meets the signal, anew at each frequency; nothing where there is no leak.</summary>
    public Way(RehearsalPlan plan, FrequencyGrid grid)
    {
        _leakDb = plan.PlateDb;
        RandomSource random = DrawStreams.Leak(plan.Seed);
        _phases = plan.PlateDb is null ? [] : [.. Enumerable.Range(0, grid.Count).Select(_ => 2 * Math.PI * random.Uniform())];
    }

    /// <summary>Loss in dB at a point of a sweep; infinite where nothing arrives.</summary>
    public double LossDb(PlannedSweep sweep, int f) => (sweep.Role, sweep.Behind) switch
    {
        (SweepRole.Floor, _) => double.PositiveInfinity,
        (SweepRole.Plate, _) => _leakDb ?? double.PositiveInfinity,
        (_, null) => 0,
        (_, var specimen) => _leakDb is { } leak ? Together(specimen.ShieldingDb[f], leak, _phases[f]) : specimen.ShieldingDb[f],
    };

    private static double Together(double shieldingDb, double leakDb, double phase)
    {
        Complex sum = Math.Pow(10, -shieldingDb / 20) + Complex.FromPolarCoordinates(Math.Pow(10, -leakDb / 20), phase);
        return -20 * Math.Log10(sum.Magnitude);
    }
}
