using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats rehearse, each with the default of the plan it sets.</summary>
internal sealed class RehearseOptions
{
    private static readonly RehearsalPlan Defaults = new();

    private readonly Command _command;
    private readonly Option<string> _title, _start, _stop, _averaging;
    private readonly Option<string[]> _ambient;
    private readonly Option<ulong> _seed;
    private readonly Option<int> _points, _floorSweeps, _referenceSweeps, _lots, _specimens, _placements, _sweeps;
    private readonly Option<double> _se, _lotSpread, _specimenSpread, _placementSpread, _sweepSpread, _scatter;
    private readonly Option<double> _floor, _floorTilt, _reference, _referenceRipple, _looks, _drift, _quantised;
    private readonly Option<double?> _seStop, _compression;

    public RehearseOptions(Command command)
    {
        _command = command;
        _title = Add("--title", "TEXT", "Name of the campaign", Defaults.Title);
        _seed = Add("--seed", "N", "Seed of all draws", Defaults.Seed);
        _start = Add("--start", "FREQUENCY", "Start of the band, for example 30MHz", "30MHz");
        _stop = Add("--stop", "FREQUENCY", "Stop of the band", "1GHz");
        _points = Add("--points", "N", "Points of a sweep", Defaults.Points);
        _floorSweeps = Add("--floor-sweeps", "N", "Floor sweeps; 0 for a campaign without floor", Defaults.FloorSweeps);
        _referenceSweeps = Add("--reference-sweeps", "N", "Reference sweeps", Defaults.ReferenceSweeps);
        _sweeps = Add("--sweeps", "N", "Covered sweeps of a placement, or of a specimen without placements", Defaults.CoveredSweeps);
        _lots = Add("--lots", "N", "Lots", Defaults.Lots);
        _specimens = Add("--specimens", "N", "Specimens of a lot", Defaults.SpecimensPerLot);
        _placements = Add("--placements", "N", "Placements of a specimen; 0 leaves them unnamed", Defaults.Placements);
        _se = Add("--se", "DB", "True shielding at the start of the band", Defaults.ShieldingStartDb);
        _seStop = Add<double?>("--se-stop", "DB", "True shielding at the stop; as at the start unless given", null);
        _lotSpread = Add("--lot-spread", "DB", "Standard deviation between lots", Defaults.LotDeviationDb);
        _specimenSpread = Add("--specimen-spread", "DB", "Standard deviation between specimens of a lot", Defaults.SpecimenDeviationDb);
        _placementSpread = Add("--placement-spread", "DB", "Standard deviation between placements", Defaults.PlacementDeviationDb);
        _sweepSpread = Add("--sweep-spread", "DB", "Standard deviation of a whole sweep's offset", Defaults.SweepDeviationDb);
        _scatter = Add("--scatter", "DB", "Standard deviation of a single point, beside noise", Defaults.ScatterDb);
        _floor = Add("--floor", "DBM", "Noise power in the resolution bandwidth", Defaults.FloorDbm);
        _floorTilt = Add("--floor-tilt", "DB", "How much higher the noise is at the stop of the band", Defaults.FloorTiltDb);
        _reference = Add("--reference", "DBM", "Reference level", Defaults.ReferenceDbm);
        _referenceRipple = Add("--reference-ripple", "DB", "Swing of the reference level over the band", Defaults.ReferenceRippleDb);
        _averaging = Add("--averaging", "power|log|sample", "How the receiver averages", "power");
        _looks = Add("--looks", "N", "Looks averaged in a reading", Defaults.Looks);
        _drift = Add("--drift", "DB", "How far the source moves from the first sweep to the last", Defaults.DriftDb);
        _ambient = Add<string[]>("--ambient", "FREQUENCY:DB", "A transmitter that never pauses and its level over the floor, for example 433MHz:20; may be repeated", []);
        _compression = Add<double?>("--compression", "DBM", "Input level at which the receiver shows 1 dB too little; none unless given", null);
        _quantised = Add("--quantised", "DB", "Step of the displayed levels", Defaults.QuantisationDb);
        _averaging.AcceptOnlyFromAmong("power", "log", "sample");
    }

    /// <summary>The plan that the words ask for; null after adding what is wrong with them to the list.</summary>
    public RehearsalPlan? Plan(ParseResult words, List<string> wrong)
    {
        Hertz? start = Frequency(words, _start, wrong), stop = Frequency(words, _stop, wrong);
        ImmutableArray<AmbientCarrier> ambient = Ambient(words.GetValue(_ambient) ?? [], wrong);
        if (start >= stop)
        {
            wrong.Add("--stop: the band must stop above its start");
        }

        if (wrong.Count > 0)
        {
            return null;
        }

        return new RehearsalPlan
        {
            Title = words.GetValue(_title)!,
            Seed = words.GetValue(_seed),
            Band = new FrequencyBand(start!.Value, stop!.Value),
            Points = words.GetValue(_points),
            FloorSweeps = words.GetValue(_floorSweeps),
            ReferenceSweeps = words.GetValue(_referenceSweeps),
            Lots = words.GetValue(_lots),
            SpecimensPerLot = words.GetValue(_specimens),
            Placements = words.GetValue(_placements),
            CoveredSweeps = words.GetValue(_sweeps),
            ShieldingStartDb = words.GetValue(_se),
            ShieldingStopDb = words.GetValue(_seStop) ?? words.GetValue(_se),
            LotDeviationDb = words.GetValue(_lotSpread),
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
            DriftDb = words.GetValue(_drift),
            Ambient = ambient,
            CompressionDbm = words.GetValue(_compression),
            QuantisationDb = words.GetValue(_quantised),
        };
    }

    private Option<T> Add<T>(string name, string value, string description, T standard)
    {
        var option = new Option<T>(name) { Description = description, HelpName = value };
        option.CustomParser = option switch
        {
            Option<double> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, double>)NumberText.Real,
            Option<double?> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, double?>)NumberText.MaybeReal,
            Option<int> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, int>)NumberText.Whole,
            Option<ulong> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, ulong>)NumberText.Seed,
            _ => null,
        };
        if (standard is not null and not string[])
        {
            option.DefaultValueFactory = _ => standard;
        }

        _command.Options.Add(option);
        return option;
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

    private static ImmutableArray<AmbientCarrier> Ambient(string[] texts, List<string> wrong)
    {
        var carriers = ImmutableArray.CreateBuilder<AmbientCarrier>();
        foreach (string text in texts)
        {
            string[] parts = text.Split(':');
            if (parts.Length == 2 && FrequencyText.Parse(parts[0]) is { } frequency
                && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double level) && double.IsFinite(level))
            {
                carriers.Add(new AmbientCarrier(frequency, new Decibels(level)));
            }
            else
            {
                wrong.Add($"--ambient {text}: a transmitter reads 433MHz:20, its frequency and its level over the floor in dB");
            }
        }

        return carriers.ToImmutable();
    }
}
