using System.CommandLine;
using System.Globalization;
using SweepStats.Rehearsal;

namespace SweepStats.Cli.Commands;

/// <summary>Options of sweepstats rehearse for what goes wrong at the bench, and for the sweeps that show it.</summary>
internal sealed class RehearseFaultOptions
{
    private const string WarmUp = "warm-up";
    private static readonly RehearsalPlan Defaults = new();
    private static readonly string[] TimeFormats =
        ["yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-ddTHH:mmK", "yyyy-MM-ddTHH:mm:ssK"];

    private readonly Option<string> _driftShape;
    private readonly Option<string?> _startsAt;
    private readonly Option<string[]> _ambient, _odd;
    private readonly Option<double[]> _linearity;
    private readonly Option<int> _linearitySweeps, _plateSweeps;
    private readonly Option<double> _drift, _quantised, _source, _jumpShare, _jump, _seconds;
    private readonly Option<double?> _compression, _limit, _plate;

    public RehearseFaultOptions(OptionList options)
    {
        _drift = options.Add("--drift", "DB", "How far the source moves from the first sweep to the last", Defaults.DriftDb);
        _driftShape =
            options.Add("--drift-shape", "steady|warm-up", "How it moves: evenly, or most of it in the first third", "steady");
        _odd = options.Add<string[]>("--odd", "ROLE:NUMBER:DB[:DB]",
            "A sweep that is off: its number among those of its role, its offset and the rms of a standing wave, for example "
                + "reference:3:2 or covered:1:0:0.5; may be repeated", []);
        _jumpShare = options.Add("--jump-share", "SHARE",
            "Share of the points of reference and covered that jump, as a loose contact makes them, 0 to 1", Defaults.JumpShare);
        _jump = options.Add("--jump", "DB", "How far they jump", Defaults.JumpDb);
        _ambient = options.Add<string[]>("--ambient", "FREQUENCY:DB[:SHARE]",
            "A transmitter, its level over the floor and the share of sweeps that see it (all unless given), for example "
                + "433MHz:20 or 433MHz:20:0.5; may be repeated", []);
        _compression = options.Add<double?>("--compression", "DBM",
            "Input level at which the receiver shows 1 dB too little; none unless given", null);
        _limit = options.Add<double?>("--limit", "DBM", "Highest level that the display shows; none unless given", null);
        _quantised = options.Add("--quantised", "DB", "Step of the displayed levels", Defaults.QuantisationDb);
        _source = options.Add("--source", "DBM", "Source level of reference and covered", Defaults.SourceDbm);
        _linearity = options.Add<double[]>("--linearity", "DBM",
            "A source level at which linearity sweeps are taken, for example -10; may be repeated", []);
        _linearitySweeps =
            options.Add("--linearity-sweeps", "N", "Linearity sweeps at each of these levels", Defaults.LinearitySweeps);
        _plate = options.Add<double?>("--plate", "DB",
            "How far below the reference a leak round the specimen arrives; none unless given", null);
        _plateSweeps =
            options.Add("--plate-sweeps", "N", "Sweeps of a solid plate in place of the specimen", Defaults.PlateSweeps);
        _startsAt = options.Add<string?>("--starts-at", "TIME",
            "When the first sweep is taken, for example 2026-03-05T14:30; sweeps have no times unless given", null);
        _seconds = options.Add("--seconds", "N", "Seconds from one sweep to the next", Defaults.SecondsPerSweep);
        _driftShape.AcceptOnly("steady", WarmUp);
    }

    /// <summary>A plan of these faults, all else at its default; what is wrong with the words is added to the list.</summary>
    public RehearsalPlan Plan(ParseResult words, List<string> wrong) => new()
    {
        DriftDb = words.GetValue(_drift),
        DriftShape = words.GetValue(_driftShape) == WarmUp ? DriftShape.WarmUp : DriftShape.Steady,
        OddSweeps = FaultText.OddSweeps(words.GetValue(_odd) ?? [], wrong),
        JumpShare = words.GetValue(_jumpShare),
        JumpDb = words.GetValue(_jump),
        Ambient = FaultText.Ambient(words.GetValue(_ambient) ?? [], wrong),
        CompressionDbm = words.GetValue(_compression),
        LimitDbm = words.GetValue(_limit),
        QuantisationDb = words.GetValue(_quantised),
        SourceDbm = words.GetValue(_source),
        LinearitySourcesDbm = [.. words.GetValue(_linearity) ?? []],
        LinearitySweeps = words.GetValue(_linearitySweeps),
        PlateDb = words.GetValue(_plate),
        PlateSweeps = words.GetValue(_plateSweeps),
        StartsAt = Time(words.GetValue(_startsAt), wrong),
        SecondsPerSweep = words.GetValue(_seconds),
    };

    private DateTimeOffset? Time(string? text, List<string> wrong)
    {
        if (text is null)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, TimeFormats, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal,
            out DateTimeOffset time))
        {
            return time;
        }

        wrong.Add($"{_startsAt.Name} {text}: a time reads 2026-03-05T14:30 or 2026-03-05T14:30+01:00");
        return null;
    }
}
