using System.CommandLine;
using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Statistics;

namespace SweepStats.Cli.Commands;

/// <summary>One observation, stated on the command line in place of a file.</summary>
internal sealed class SingleObservation
{
    private readonly Option<double?> _level, _levelError, _sensitivity, _sensitivityError, _field, _factor, _power, _gain,
        _distance;
    private readonly Option<string?> _frequency = new("--frequency")
    {
        Description = "Frequency, for example 145.5MHz",
        HelpName = "FREQUENCY",
    };

    private readonly Option<bool> _silent = new("--silent") { Description = "It fell silent under the cover" };
    private readonly Option<bool> _heard = new("--heard") { Description = "It is still heard under the cover" };
    private readonly Option<string?> _uncovered = new("--uncovered")
    {
        Description = "What it was without the cover: silence under the cover is evidence only of a receiver that was heard "
            + "before",
        HelpName = "heard|silent",
    };

    /// <summary>Adds the options to the command; numbers come with the range they may lie in.</summary>
    public SingleObservation(Command command)
    {
        var options = new OptionList(command);
        _level = Add(options, "--level", "DBM", "Level at the receiver without the cover", new(-250, 100));
        _levelError = Add(options, "--level-u", "DB", "Standard uncertainty of the level, however it is stated", new(0, 40));
        _sensitivity = Add(options, "--sensitivity", "DBM", "Level at which the receiver falls silent, with the settings used",
            new(-250, 100));
        _sensitivityError = Add(options, "--sensitivity-u", "DB", "Its standard uncertainty", new(0, 40));
        _field = Add(options, "--field", "DBUV_PER_M", "Field strength without the cover, in place of --level", new(-100, 250));
        _factor = Add(options, "--antenna-factor", "DB_PER_M", "Antenna factor that goes with --field", new(-60, 120));
        _power = Add(options, "--power", "DBM",
            "Power of the transmitter, with --distance in place of --level: reckoned as if in free space", new(-250, 100));
        _gain = Add(options, "--gain", "DBI", "Gain of both antennas together; 0 unless given", new(-100, 120));
        _distance = Add(options, "--distance", "M", "Distance of the transmitter", new(0.001, 1e9));
        _uncovered.AcceptOnly("heard", "silent");
        foreach (Option option in (Option[])[_frequency, _silent, _heard, _uncovered])
        {
            command.Options.Add(option);
        }
    }

    /// <summary>Why the words state no observation, or not one alone; null where they do, or where none of them is
    /// there.</summary>
    public string? Objection(ParseResult words, bool file)
    {
        Option[] given = [.. All.Where(o => words.GetResult(o) is { Implicit: false })];
        return file ? given.Length == 0 ? null
            : $"{given[0].Name} states one observation, and a file states them too; keep one of the two"
            : given.Length == 0 ? "receiver needs a file of observations, or --level, --sensitivity and --silent or --heard"
            : words.GetValue(_silent) == words.GetValue(_heard) ? "state either --silent or --heard"
            : words.GetValue(_sensitivity) is null ? "state --sensitivity"
            : (words.GetValue(_levelError) is null) != (words.GetValue(_sensitivityError) is null)
                ? "state both --level-u and --sensitivity-u"
            : words.GetValue(_frequency) is { } f && !IsFrequency(f)
                ? $"--frequency {f}: write a frequency from 1kHz to 1000GHz, such as 145.5MHz; without a unit it is in hertz"
            : LevelObjection(words);
    }

    /// <summary>The observation; only where there is no objection.</summary>
    public ReceiverObservation Of(ParseResult words) => new()
    {
        Name = "this station",
        Frequency = Frequency(words),
        Level = Level(words),
        SensitivityDbm = words.GetValue(_sensitivity)!.Value,
        SensitivityUncertaintyDb = words.GetValue(_sensitivityError) ?? 0,
        HeardUncovered = words.GetValue(_uncovered) switch { null => null, var stated => stated == "heard" },
        HeardCovered = words.GetValue(_heard),
        IsUncertaintyStated = words.GetValue(_levelError) is not null,
    };

    private IEnumerable<Option> All =>
        [_level, _levelError, _sensitivity, _sensitivityError, _field, _factor, _power, _gain, _distance, _frequency, _silent,
            _heard, _uncovered];

    private string? LevelObjection(ParseResult words)
    {
        bool level = words.GetValue(_level) is not null, field = words.GetValue(_field) is not null
            || words.GetValue(_factor) is not null;
        bool reckoned = words.GetValue(_power) is not null || words.GetValue(_distance) is not null
            || words.GetValue(_gain) is not null;
        const string ways = "state --level; or --field and --antenna-factor; or --power, --distance and --frequency";
        return (level, field, reckoned) switch
        {
            (true, false, false) => null,
            (false, true, false) => words.GetValue(_field) is null || words.GetValue(_factor) is null ? ways : null,
            (false, false, true) => DistanceObjection(words, ways),
            (false, false, false) => $"the level is not stated: {ways}",
            _ => $"the level is stated in two ways: {ways}",
        };
    }

    private string? DistanceObjection(ParseResult words, string ways)
    {
        if (words.GetValue(_power) is null || words.GetValue(_distance) is not { } metres
            || Frequency(words) is not { } frequency)
        {
            return ways;
        }

        return metres < ReceivedLevel.SpeedOfLight / frequency.Value ? TooNear(metres)
            : words.GetValue(_levelError) >= ReceivedLevel.LeastFreeSpaceUncertaintyDb ? null
            : TooSure;
    }

    private static string TooNear(double metres) => FormattableString.Invariant($"--distance {metres}: nearer than a wavelength ")
        + "no free-space loss holds; measure the level and state --level";

    private static string TooSure => FormattableString.Invariant($"state --level-u {ReceivedLevel.LeastFreeSpaceUncertaintyDb} ")
        + "or more, since a level reckoned by distance is no surer; or measure the level and state --level";

    private ReceivedLevel Level(ParseResult words)
    {
        double u = words.GetValue(_levelError) ?? 0;
        return words.GetValue(_level) is { } dbm ? new ReceivedLevel(dbm, u, LevelOrigin.Level)
            : words.GetValue(_field) is { } field ? ReceivedLevel.FromField(field, words.GetValue(_factor)!.Value, u)
            : ReceivedLevel.InFreeSpace(words.GetValue(_power)!.Value, words.GetValue(_gain) ?? 0,
                words.GetValue(_distance)!.Value, Frequency(words)!.Value, u);
    }

    private Hertz? Frequency(ParseResult words) => words.GetValue(_frequency) is { } text ? FrequencyText.Parse(text) : null;

    private static bool IsFrequency(string text) =>
        FrequencyText.Parse(text) is { } frequency && ReceiverObservation.Frequencies.Contains(frequency);

    private static Option<double?> Add(OptionList options, string name, string value, string description,
        Interval range) => ReceiverOptions.Add(options, name, value, description,
            new NumberRule(v =>
            v >= range.Low
            && v <= range.High, FormattableString.Invariant($"this lies between {range.Low} and {range.High}")));
}
