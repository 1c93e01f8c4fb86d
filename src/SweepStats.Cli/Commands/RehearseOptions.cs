using System.Collections.Immutable;
using System.CommandLine;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats rehearse, each with the default of the plan it sets.</summary>
internal sealed class RehearseOptions
{
    private static readonly RehearsalPlan Defaults = new();

    private readonly RehearseFaultOptions _faults;
    private readonly Option<string> _title, _start, _stop, _averaging;
    private readonly Option<string[]> _lotSteps;
    private readonly Option<ulong> _seed;
    private readonly Option<int> _points, _floorSweeps, _referenceSweeps, _lots, _specimens, _placements, _sweeps;
    private readonly Option<double> _se, _lotSpread, _specimenSpread, _placementSpread, _sweepSpread, _scatter;
    private readonly Option<double> _floor, _floorTilt, _reference, _referenceRipple, _looks;
    private readonly Option<double?> _seStop, _wear;
    private readonly Option<string> _cycles;

    public RehearseOptions(Command command)
    {
        var options = new OptionList(command);
        _title = options.Add("--title", "TEXT", "Name of the campaign", Defaults.Title);
        _seed = options.Add("--seed", "N", "Seed of all draws", Defaults.Seed);
        _start = options.Add("--start", "FREQUENCY", "Start of the band, for example 30MHz", "30MHz");
        _stop = options.Add("--stop", "FREQUENCY", "Stop of the band", "1GHz");
        _points = options.Add("--points", "N", "Points of a sweep", Defaults.Points);
        _floorSweeps = options.Add("--floor-sweeps", "N", "Floor sweeps; 0 for a campaign without floor", Defaults.FloorSweeps);
        _referenceSweeps = options.Add("--reference-sweeps", "N", "Reference sweeps", Defaults.ReferenceSweeps);
        _sweeps = options.Add("--sweeps", "N", "Covered sweeps of a placement, or of a specimen without placements",
            Defaults.CoveredSweeps);
        _lots = options.Add("--lots", "N", "Lots", Defaults.Lots);
        _specimens = options.Add("--specimens", "N", "Specimens of a lot", Defaults.SpecimensPerLot);
        _placements = options.Add("--placements", "N", "Placements of a specimen; 0 leaves them unnamed", Defaults.Placements);
        _se = options.Add("--se", "DB", "True shielding at the start of the band", Defaults.ShieldingStartDb);
        _seStop = options.Add<double?>("--se-stop", "DB", "True shielding at the stop; as at the start unless given", null);
        _lotSpread = options.Add("--lot-spread", "DB", "Standard deviation between lots", Defaults.LotDeviationDb);
        _lotSteps = options.Add<string[]>("--lot-step", "LOT:DB:START-STOP",
            "A lot whose true shielding is changed between two frequencies, both included, for example B:-6:300MHz-600MHz; may "
                + "be repeated", []);
        _wear = options.Add<double?>("--wear", "DB",
            "Shielding that each cycle of wear takes away; each lot then has its number of cycles behind it", null);
        _cycles = options.Add("--cycles", "N,N,…", "With --wear: cycles of each lot", "0,5,10,20,30");
        _specimenSpread =
            options.Add("--specimen-spread", "DB", "Standard deviation between specimens of a lot", Defaults.SpecimenDeviationDb);
        _placementSpread =
            options.Add("--placement-spread", "DB", "Standard deviation between placements", Defaults.PlacementDeviationDb);
        _sweepSpread =
            options.Add("--sweep-spread", "DB", "Standard deviation of a whole sweep's offset", Defaults.SweepDeviationDb);
        _scatter = options.Add("--scatter", "DB", "Standard deviation of a single point, beside noise", Defaults.ScatterDb);
        _floor = options.Add("--floor", "DBM", "Noise power in the resolution bandwidth", Defaults.FloorDbm);
        _floorTilt =
            options.Add("--floor-tilt", "DB", "How much higher the noise is at the stop of the band", Defaults.FloorTiltDb);
        _reference = options.Add("--reference", "DBM", "Reference level", Defaults.ReferenceDbm);
        _referenceRipple =
            options.Add("--reference-ripple", "DB", "Swing of the reference level over the band", Defaults.ReferenceRippleDb);
        _averaging = options.Add("--averaging", "power|log|sample", "How the receiver averages", "power");
        _looks = options.Add("--looks", "N", "Looks averaged in a reading", Defaults.Looks);
        _faults = new RehearseFaultOptions(options);
        _averaging.AcceptOnly("power", "log", "sample");
    }

    /// <summary>The plan that the words ask for; null after adding what is wrong with them to the list.</summary>
    public RehearsalPlan? Plan(ParseResult words, List<string> wrong)
    {
        Hertz? start = Frequency(words, _start, wrong), stop = Frequency(words, _stop, wrong);
        if (start >= stop)
        {
            wrong.Add("--stop: the band must stop above its start");
        }

        RehearsalPlan faults = _faults.Plan(words, wrong);
        ImmutableArray<LotStep> lotSteps = LotStepText.Parse(words.GetValue(_lotSteps) ?? [], wrong);
        double? wear = words.GetValue(_wear);
        ImmutableArray<double> cycles = wear is null ? [] : CyclesText.Parse(words.GetValue(_cycles)!, wrong);
        if (wear is not null && words.GetResult(_lots) is { Implicit: false })
        {
            wrong.Add("--lots: with --wear there is a lot for each number under --cycles");
        }

        if (wrong.Count > 0)
        {
            return null;
        }

        return faults with
        {
            Title = words.GetValue(_title)!,
            Seed = words.GetValue(_seed),
            Band = new FrequencyBand(start!.Value, stop!.Value),
            Points = words.GetValue(_points),
            FloorSweeps = words.GetValue(_floorSweeps),
            ReferenceSweeps = words.GetValue(_referenceSweeps),
            Lots = wear is null ? words.GetValue(_lots) : cycles.Length,
            Cycles = cycles,
            WearDb = wear ?? 0,
            SpecimensPerLot = words.GetValue(_specimens),
            Placements = words.GetValue(_placements),
            CoveredSweeps = words.GetValue(_sweeps),
            ShieldingStartDb = words.GetValue(_se),
            ShieldingStopDb = words.GetValue(_seStop) ?? words.GetValue(_se),
            LotDeviationDb = words.GetValue(_lotSpread),
            LotSteps = lotSteps,
            SpecimenDeviationDb = words.GetValue(_specimenSpread),
            PlacementDeviationDb = words.GetValue(_placementSpread),
            SweepDeviationDb = words.GetValue(_sweepSpread),
            ScatterDb = words.GetValue(_scatter),
            FloorDbm = words.GetValue(_floor),
            FloorTiltDb = words.GetValue(_floorTilt),
            ReferenceDbm = words.GetValue(_reference),
            ReferenceRippleDb = words.GetValue(_referenceRipple),
            Averaging = Enum.Parse<Averaging>(words.GetValue(_averaging)!, ignoreCase: true),
            Looks = words.GetValue(_looks),
        };
    }

    private static Hertz? Frequency(ParseResult words, Option<string> option, List<string> wrong)
    {
        string text = words.GetValue(option)!;
        Hertz? frequency = FrequencyText.Parse(text);
        if (frequency is null)
        {
            wrong.Add($"{option.Name} {text}: a frequency reads 30MHz, 1.5 GHz or 30e6");
        }

        return frequency;
    }
}
