using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A source, a path and a receiver that behave as the plan says.</summary>
internal sealed class Bench
{
    private readonly RehearsalPlan _plan;
    private readonly FrequencyGrid _grid;
    private readonly Detector _detector;
    private readonly AmbientField _ambient;
    private readonly Way _way;
    private readonly SharedErrors _shared;
    private readonly Display _display;
    private readonly double[] _signal;

    /// <summary>Lays noise and signal of the plan over the grid, and draws the errors that all sweeps of a role share.</summary>
    public Bench(RehearsalPlan plan, FrequencyGrid grid)
    {
        _plan = plan;
        _grid = grid;
        _detector = new Detector(plan.Averaging, plan.Looks);
        _ambient = new AmbientField(plan, grid);
        _way = new Way(plan, grid);
        _shared = new SharedErrors(plan, grid);
        _display = new Display(plan);
        _signal = new double[grid.Count];
        var noise = ImmutableArray.CreateBuilder<double>(grid.Count);
        for (int f = 0; f < grid.Count; f++)
        {
            double along = Rehearser.Along(plan.Band, grid[f].Value);
            noise.Add(plan.FloorDbm + (plan.FloorTiltDb * along));
            _signal[f] = plan.ReferenceDbm + (plan.ReferenceRippleDb / 2 * Math.Sin(12 * along));
        }

        NoiseDbm = noise.MoveToImmutable();
    }

    /// <summary>True noise at each frequency, in dBm: mean power, before receiver and display.</summary>
    public ImmutableArray<double> NoiseDbm { get; }

    /// <summary>Takes a sweep.</summary>
    /// <param name="sweep">What is to be taken; its draws depend on its stream and nothing else.</param>
    /// <param name="place">Its place in the campaign, from 0.</param>
    /// <param name="time">When, 0 at the start of the campaign and 1 at its end.</param>
    public Sweep Take(PlannedSweep sweep, int place, double time) =>
        new(sweep.Path, sweep.Role, _grid, Levels(sweep, time), LevelScale.DecibelMilliwatts)
        {
            Lot = sweep.Behind?.Name.Lot,
            Specimen = sweep.Behind?.Name.Specimen,
            Placement = sweep.Placement,
            SourceDbm = sweep.Role == SweepRole.Floor || _plan.LinearitySourcesDbm.IsEmpty ? null
                : sweep.SourceDbm ?? _plan.SourceDbm,
            TakenAt = _plan.StartsAt + TimeSpan.FromSeconds(place * _plan.SecondsPerSweep),
        };

    private ImmutableArray<double> Levels(PlannedSweep sweep, double time)
    {
        RandomSource random = new RandomSource(_plan.Seed).Fork(sweep.Stream);
        double offset = Offset(sweep, time, random);
        bool isFloor = sweep.Role == SweepRole.Floor;
        double[] odd = Oddity.Of(_plan, sweep, _grid);
        double[] ambient = _ambient.In(sweep);
        var levels = ImmutableArray.CreateBuilder<double>(_grid.Count);
        for (int f = 0; f < _grid.Count; f++)
        {
            double scatter = _plan.ScatterDb * random.Normal();
            double level = _signal[f] + offset + scatter + _shared.Db(sweep, f) - _way.LossDb(sweep, f);
            double signal = Math.Pow(10, (level + (isFloor ? 0 : odd[f]) - NoiseDbm[f]) / 10);
            double noise = NoiseDbm[f] + (isFloor ? odd[f] : 0);
            levels.Add(_display.Of(noise + _detector.Reading(ambient[f] + signal, random)));
        }

        return levels.MoveToImmutable();
    }

    // What all readings of a sweep share.
    private double Offset(PlannedSweep sweep, double time, RandomSource random)
    {
        double offset = (_plan.SweepDeviationDb * random.Normal()) + (_plan.DriftDb * Drift.Share(_plan.DriftShape, time));
        if (sweep.Behind is not null)
        {
            offset += _plan.PlacementDeviationDb
                * new RandomSource(_plan.Seed).Fork((ulong)sweep.PlacementNumber + 1_000).Normal();
        }

        return offset + (sweep.SourceDbm is { } source ? source - _plan.SourceDbm : 0);
    }
}
