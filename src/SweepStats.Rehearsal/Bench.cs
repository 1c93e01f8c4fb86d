using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A source, a path and a receiver that behave as the plan says.</summary>
internal sealed class Bench
{
    // 10^(0.1) − 1: what is added to 1 to show 1 dB too little.
    private const double OneDecibel = 0.25892541179416723;

    private readonly RehearsalPlan _plan;
    private readonly FrequencyGrid _grid;
    private readonly Detector _detector;
    private readonly double[] _signal;
    private readonly double[] _ambient;

    public Bench(RehearsalPlan plan, FrequencyGrid grid)
    {
        _plan = plan;
        _grid = grid;
        _detector = new Detector(plan.Averaging, plan.Looks);
        _signal = new double[grid.Count];
        _ambient = new double[grid.Count];
        var noise = ImmutableArray.CreateBuilder<double>(grid.Count);
        for (int f = 0; f < grid.Count; f++)
        {
            double along = Rehearser.Along(plan.Band, grid[f].Value);
            noise.Add(plan.FloorDbm + (plan.FloorTiltDb * along));
            _signal[f] = plan.ReferenceDbm + (plan.ReferenceRippleDb / 2 * Math.Sin(12 * along));
        }

        NoiseDbm = noise.MoveToImmutable();
        foreach (AmbientCarrier carrier in plan.Ambient)
        {
            _ambient[Nearest(carrier.Frequency.Value)] += Math.Pow(10, carrier.AboveFloor.Value / 10);
        }
    }

    public ImmutableArray<double> NoiseDbm { get; }

    /// <summary>Takes a sweep.</summary>
    /// <param name="sweep">What is to be taken.</param>
    /// <param name="number">Its place in the campaign: its draws depend on nothing else.</param>
    /// <param name="time">When, 0 at the start of the campaign and 1 at its end.</param>
    public Sweep Take(PlannedSweep sweep, int number, double time)
    {
        RandomSource random = new RandomSource(_plan.Seed).Fork((ulong)number + 1_000_000);
        double offset = (_plan.SweepDeviationDb * random.Normal()) + (_plan.DriftDb * time);
        if (sweep.Behind is not null)
        {
            offset += _plan.PlacementDeviationDb * new RandomSource(_plan.Seed).Fork((ulong)sweep.PlacementNumber + 1_000).Normal();
        }

        var levels = ImmutableArray.CreateBuilder<double>(_grid.Count);
        for (int f = 0; f < _grid.Count; f++)
        {
            double scatter = _plan.ScatterDb * random.Normal();
            double snr = _ambient[f];
            if (sweep.Role != SweepRole.Floor)
            {
                double level = _signal[f] + offset + scatter - (sweep.Behind?.ShieldingDb[f] ?? 0);
                snr += Math.Pow(10, (level - NoiseDbm[f]) / 10);
            }

            levels.Add(Displayed(NoiseDbm[f] + _detector.Reading(snr, random)));
        }

        return new Sweep(sweep.Path, sweep.Role, _grid, levels.MoveToImmutable(), LevelScale.DecibelMilliwatts)
        {
            Lot = sweep.Behind?.Name.Lot,
            Specimen = sweep.Behind?.Name.Specimen,
            Placement = sweep.Placement,
        };
    }

    private double Displayed(double level)
    {
        double shown = _plan.CompressionDbm is { } onset
            ? level - (10 * Math.Log10(1 + (OneDecibel * Math.Pow(10, (level - onset) / 10))))
            : level;
        return _plan.QuantisationDb > 0 ? Math.Round(shown / _plan.QuantisationDb) * _plan.QuantisationDb : shown;
    }

    private int Nearest(double hertz)
    {
        int nearest = 0;
        for (int f = 1; f < _grid.Count; f++)
        {
            nearest = Math.Abs(_grid[f].Value - hertz) < Math.Abs(_grid[nearest].Value - hertz) ? f : nearest;
        }

        return nearest;
    }
}
