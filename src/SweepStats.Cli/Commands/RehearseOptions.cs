using System.CommandLine;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats rehearse, each with the default of the plan it sets.</summary>
internal sealed class RehearseOptions
{
    private static readonly RehearsalPlan Defaults = new();

    private readonly RehearseSettings _settings = new();
    private readonly RehearseFaultOptions _faults;
    private readonly Option<string> _start, _stop, _cycles;
    private readonly Option<string[]> _lotSteps;
    private readonly Option<int> _lots;
    private readonly Option<double?> _seStop, _wear;

    /// <summary>Adds the options to the command, in the order in which its help lists them.</summary>
    public RehearseOptions(Command command)
    {
        var options = new OptionList(command);
        Set(options.Add("--title", "TEXT", "Name of the campaign", Defaults.Title), (p, title) => p with { Title = title });
        Set(options.Add("--seed", "N", "Seed of all draws", Defaults.Seed), (p, seed) => p with { Seed = seed });
        _start = options.Add("--start", "FREQUENCY", "Start of the band, for example 30MHz", "30MHz");
        _stop = options.Add("--stop", "FREQUENCY", "Stop of the band", "1GHz");
        Set(options.Add("--points", "N", "Points of a sweep", Defaults.Points), (p, n) => p with { Points = n });
        Set(options.Add("--floor-sweeps", "N", "Floor sweeps; 0 for a campaign without floor", Defaults.FloorSweeps),
            (p, n) => p with { FloorSweeps = n });
        Set(options.Add("--reference-sweeps", "N", "Reference sweeps", Defaults.ReferenceSweeps),
            (p, n) => p with { ReferenceSweeps = n });
        Set(options.Add("--sweeps", "N", "Covered sweeps of a placement, or of a specimen without placements",
            Defaults.CoveredSweeps), (p, n) => p with { CoveredSweeps = n });
        _lots = options.Add("--lots", "N", "Lots", Defaults.Lots);
        Set(options.Add("--specimens", "N", "Specimens of a lot", Defaults.SpecimensPerLot),
            (p, n) => p with { SpecimensPerLot = n });
        Set(options.Add("--placements", "N", "Placements of a specimen; 0 leaves them unnamed", Defaults.Placements),
            (p, n) => p with { Placements = n });
        Set(options.Add("--se", "DB", "True shielding at the start of the band", Defaults.ShieldingStartDb),
            (p, db) => p with { ShieldingStartDb = db });
        _seStop = options.Add<double?>("--se-stop", "DB", "True shielding at the stop; as at the start unless given", null);
        Set(options.Add("--lot-spread", "DB", "Standard deviation between lots", Defaults.LotDeviationDb),
            (p, db) => p with { LotDeviationDb = db });
        _lotSteps = options.Add<string[]>("--lot-step", "LOT:DB:START-STOP",
            "A lot whose true shielding is changed between two frequencies, both included, for example B:-6:300MHz-600MHz; may "
                + "be repeated", []);
        _wear = options.Add<double?>("--wear", "DB",
            "Shielding that each cycle of wear takes away; each lot then has its number of cycles behind it", null);
        _cycles = options.Add("--cycles", "N,N,…", "With --wear: cycles of each lot", "0,5,10,20,30");
        AddSpreads(options);
        AddLevels(options);
        _faults = new RehearseFaultOptions(options, _settings);
    }

    private void AddSpreads(OptionList options)
    {
        Set(options.Add("--specimen-spread", "DB", "Standard deviation between specimens of a lot",
            Defaults.SpecimenDeviationDb), (p, db) => p with { SpecimenDeviationDb = db });
        Set(options.Add("--placement-spread", "DB", "Standard deviation between placements", Defaults.PlacementDeviationDb),
            (p, db) => p with { PlacementDeviationDb = db });
        Set(options.Add("--sweep-spread", "DB", "Standard deviation of a whole sweep's offset", Defaults.SweepDeviationDb),
            (p, db) => p with { SweepDeviationDb = db });
        Set(options.Add("--scatter", "DB", "Standard deviation of a single point, beside noise", Defaults.ScatterDb),
            (p, db) => p with { ScatterDb = db });
    }

    private void AddLevels(OptionList options)
    {
        Set(options.Add("--floor", "DBM", "Noise power in the resolution bandwidth", Defaults.FloorDbm),
            (p, dbm) => p with { FloorDbm = dbm });
        Set(options.Add("--floor-tilt", "DB", "How much higher the noise is at the stop of the band", Defaults.FloorTiltDb),
            (p, db) => p with { FloorTiltDb = db });
        Set(options.Add("--reference", "DBM", "Reference level", Defaults.ReferenceDbm),
            (p, dbm) => p with { ReferenceDbm = dbm });
        Set(options.Add("--reference-ripple", "DB", "Swing of the reference level over the band", Defaults.ReferenceRippleDb),
            (p, db) => p with { ReferenceRippleDb = db });
        Option<string> averaging = options.Add("--averaging", "power|log|sample", "How the receiver averages", "power");
        averaging.AcceptOnly("power", "log", "sample");
        Set(averaging, (p, word) => p with { Averaging = Enum.Parse<Averaging>(word, ignoreCase: true) });
        Set(options.Add("--looks", "N", "Looks averaged in a reading", Defaults.Looks), (p, looks) => p with { Looks = looks });
    }

    private void Set<T>(Option<T> option, Func<RehearsalPlan, T, RehearsalPlan> set) => _settings.Set(option, set);

    /// <summary>The plan that the words ask for; null after adding what is wrong with them to the list.</summary>
    public RehearsalPlan? Plan(ParseResult words, List<string> wrong)
    {
        Hertz? start = Frequency(words, _start, wrong), stop = Frequency(words, _stop, wrong);
        if (start >= stop)
        {
            wrong.Add("--stop: the band must stop above its start");
        }

        RehearsalPlan plan = _faults.Told(_settings.Plan(words), words, wrong);
        ImmutableArray<LotStep> lotSteps = LotStepText.Parse(words.GetValue(_lotSteps) ?? [], wrong);
        double? wear = words.GetValue(_wear);
        ImmutableArray<double> cycles = wear is null ? [] : CyclesText.Parse(words.GetValue(_cycles)!, wrong);
        if (wear is not null && words.GetResult(_lots) is { Implicit: false })
        {
            wrong.Add("--lots: with --wear there is a lot for each number under --cycles");
        }

        return wrong.Count > 0 ? null : plan with
        {
            Band = new FrequencyBand(start!.Value, stop!.Value),
            Lots = wear is null ? words.GetValue(_lots) : cycles.Length,
            Cycles = cycles,
            WearDb = wear ?? 0,
            ShieldingStopDb = words.GetValue(_seStop) ?? plan.ShieldingStartDb,
            LotSteps = lotSteps,
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
