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

    private readonly Option<string?> _startsAt;
    private readonly Option<string[]> _ambient, _odd;

    /// <summary>Adds the options; each sets its own part of the plan, but for those that are written in parts.</summary>
    public RehearseFaultOptions(OptionList options, RehearseSettings settings)
    {
        settings.Set(options.Add("--drift", "DB", "How far the source moves from the first sweep to the last",
            Defaults.DriftDb), (p, db) => p with { DriftDb = db });
        Option<string> shape =
            options.Add("--drift-shape", "steady|warm-up", "How it moves: evenly, or most of it in the first third", "steady");
        shape.AcceptOnly("steady", WarmUp);
        settings.Set(shape, (p, word) => p with { DriftShape = word == WarmUp ? DriftShape.WarmUp : DriftShape.Steady });
        _odd = options.Add<string[]>("--odd", "ROLE:NUMBER:DB[:DB]",
            "A sweep that is off: its number among those of its role, its offset and the rms of a standing wave, for example "
                + "reference:3:2 or covered:1:0:0.5; may be repeated", []);
        settings.Set(options.Add("--jump-share", "SHARE",
            "Share of the points of reference and covered that jump, as a loose contact makes them, 0 to 1", Defaults.JumpShare),
            (p, share) => p with { JumpShare = share });
        settings.Set(options.Add("--jump", "DB", "How far they jump", Defaults.JumpDb), (p, db) => p with { JumpDb = db });
        _ambient = options.Add<string[]>("--ambient", "FREQUENCY:DB[:SHARE]",
            "A transmitter, its level over the floor and the share of sweeps that see it (all unless given), for example "
                + "433MHz:20 or 433MHz:20:0.5; may be repeated", []);
        AddReceiver(options, settings);
        AddOtherSweeps(options, settings);
        _startsAt = options.Add<string?>("--starts-at", "TIME",
            "When the first sweep is taken, for example 2026-03-05T14:30; sweeps have no times unless given", null);
        settings.Set(options.Add("--seconds", "N", "Seconds from one sweep to the next", Defaults.SecondsPerSweep),
            (p, seconds) => p with { SecondsPerSweep = seconds });
    }

    private static void AddReceiver(OptionList options, RehearseSettings settings)
    {
        settings.Set(options.Add<double?>("--compression", "DBM",
            "Input level at which the receiver shows 1 dB too little; none unless given", null),
            (p, dbm) => p with { CompressionDbm = dbm });
        settings.Set(options.Add<double?>("--limit", "DBM", "Highest level that the display shows; none unless given", null),
            (p, dbm) => p with { LimitDbm = dbm });
        settings.Set(options.Add("--quantised", "DB", "Step of the displayed levels", Defaults.QuantisationDb),
            (p, db) => p with { QuantisationDb = db });
        settings.Set(options.Add("--source", "DBM", "Source level of reference and covered", Defaults.SourceDbm),
            (p, dbm) => p with { SourceDbm = dbm });
    }

    private static void AddOtherSweeps(OptionList options, RehearseSettings settings)
    {
        settings.Set(options.Add<double[]>("--linearity", "DBM",
            "A source level at which linearity sweeps are taken, for example -10; may be repeated", []),
            (p, levels) => p with { LinearitySourcesDbm = [.. levels ?? []] });
        settings.Set(options.Add("--linearity-sweeps", "N", "Linearity sweeps at each of these levels",
            Defaults.LinearitySweeps), (p, n) => p with { LinearitySweeps = n });
        settings.Set(options.Add<double?>("--plate", "DB",
            "How far below the reference a leak round the specimen arrives; none unless given", null),
            (p, db) => p with { PlateDb = db });
        settings.Set(options.Add("--plate-sweeps", "N", "Sweeps of a solid plate in place of the specimen",
            Defaults.PlateSweeps), (p, n) => p with { PlateSweeps = n });
    }

    /// <summary>A plan with the faults that words tell in parts; what is wrong with them is added to the list.</summary>
    public RehearsalPlan Told(RehearsalPlan plan, ParseResult words, List<string> wrong) => plan with
    {
        OddSweeps = FaultText.OddSweeps(words.GetValue(_odd) ?? [], wrong),
        Ambient = FaultText.Ambient(words.GetValue(_ambient) ?? [], wrong),
        StartsAt = Time(words.GetValue(_startsAt), wrong),
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
