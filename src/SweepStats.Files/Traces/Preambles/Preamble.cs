using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>What the lines above the data plainly state: receiver settings, units, range and date. Where two lines differ, neither counts.</summary>
internal sealed class Preamble
{
    private const int LongestLine = 400;
    private const int MostLines = 5000;
    private const int MostOfOne = 2;
    private const int LongestWord = 60;

    private readonly Dictionary<Setting, ImmutableArray<string>> _found = [];
    private readonly NumberedWords _numbered = new();
    private readonly StatedNumbers _numbers = new();
    private readonly SweepDate _date = new();

    // Asked for each trace of a file, and found by patterns.
    private (DateTimeOffset? At, string? Assumption)? _taken;

    private Preamble()
    {
    }

    /// <summary>Unit of level that a line states.</summary>
    public LevelUnit? LevelUnit => One(Setting.LevelUnit) is { } unit ? LevelUnits.Parse(unit) : null;

    /// <summary>Unit of frequency that a line states.</summary>
    public FrequencyUnit? FrequencyUnit => One(Setting.FrequencyUnit) is { } unit ? FrequencyUnits.Parse(unit) : null;

    /// <summary>First frequency as stated.</summary>
    public StatedNumber? Start => _numbers.Of(Setting.Start);

    /// <summary>Last frequency as stated.</summary>
    public StatedNumber? Stop => _numbers.Of(Setting.Stop);

    /// <summary>Number of points as stated.</summary>
    public int? Points => _numbers.Of(Setting.Points)?.Value() is { } points and >= 1 and <= int.MaxValue && points == Math.Floor(points) ? (int)points : null;

    /// <summary>Names of the traces; empty where none are stated.</summary>
    public ImmutableArray<string> TraceNames => _found.TryGetValue(Setting.TraceNames, out ImmutableArray<string> names) ? names : [];

    /// <summary>When the sweep was taken, and what was assumed or passed over in finding out.</summary>
    public (DateTimeOffset? At, string? Assumption) Taken => _taken ??= _date.Found;

    /// <summary>What a person should know of what is stated and was not used, or not as it stands: numbers, and the date.</summary>
    public IEnumerable<string> Remarks => [.. _numbers.Remarks(Bare), .. Taken.Assumption is { } date ? [date] : Array.Empty<string>()];

    /// <summary>What is stated for the one trace of a file.</summary>
    public ReceiverSettings Settings => SettingsOf(0, 1);

    /// <summary>What is stated alike for all of several traces.</summary>
    public ReceiverSettings SettingsOfAll(int traces)
    {
        ReceiverSettings first = SettingsOf(0, traces);
        return Enumerable.Range(1, Math.Max(0, traces - 1)).Select(t => SettingsOf(t, traces)).Aggregate(first, SharedSettings.Of);
    }

    /// <summary>Reads the first lines of a text.</summary>
    public static Preamble Read(TraceText text, int lines) => Read(text, 0, lines);

    /// <summary>Reads the lines from one to before another.</summary>
    public static Preamble Read(TraceText text, int from, int to)
    {
        var preamble = new Preamble();
        var heading = new TraceHeading();
        for (int i = Math.Max(from, to - MostLines); i < to; i++)
        {
            if (text.Line(i).Length <= LongestLine)
            {
                string line = text.LineText(i);
                preamble._date.Line(line, i);
                heading.Pass(line);
                preamble.Take(line, i + 1, heading.Trace);
            }
        }

        return preamble;
    }

    /// <summary>What is stated for one of several traces: a line that lists as many values as there are traces states one for each.</summary>
    public ReceiverSettings SettingsOf(int trace, int traces)
    {
        string? Word(Setting setting) => Worded(setting, trace, traces);
        double? Number(Setting setting) => _numbers.Of(setting, trace, traces, Bare);
        int? averages = Number(Setting.AverageCount) is >= 0 and <= int.MaxValue and var count && count == Math.Floor(count) ? (int)count : null;
        return new ReceiverSettings
        {
            ResolutionBandwidthHz = Number(Setting.ResolutionBandwidth),
            VideoBandwidthHz = Number(Setting.VideoBandwidth),
            AttenuationDb = Number(Setting.Attenuation),
            ReferenceLevel = Number(Setting.ReferenceLevel),
            Detector = Word(Setting.Detector),
            Averaging = Word(Setting.Averaging) ?? averages?.ToString(CultureInfo.InvariantCulture) ?? Word(Setting.AveragingState),
            Averages = averages,
            SweepTimeSeconds = Number(Setting.SweepTime),
            TraceMode = Mode(trace, traces),
            Preamplifier = Word(Setting.Preamplifier),
            SourcePowerDbm = Number(Setting.SourcePower),
        };
    }

    // Bandwidths without unit are in Hz where the frequencies are; beside frequencies in MHz they may be in anything.
    private FrequencyUnit? Bare => FrequencyUnit == Traces.FrequencyUnit.Hertz ? FrequencyUnit : null;

    private void Take(string line, int number, int? trace)
    {
        bool any = false;
        foreach (Statement statement in StatementReader.Read(line))
        {
            any |= Take(statement with { Line = number, Number = statement.Number ?? trace });
        }

        foreach (Statement remark in any ? [] : RemarkReader.Read(line))
        {
            Take(remark with { Line = number, Number = trace });
        }
    }

    private bool Take(Statement statement)
    {
        if (SettingKeys.Find(statement.Key) is not { } key)
        {
            TakeMode(statement);
            return false;
        }

        string unit = statement.KeyUnit.Length > 0 ? statement.KeyUnit : key.Unit;
        switch (key.Setting)
        {
            case Setting.Date or Setting.Time or Setting.Created:
                _date.Stated(key.Setting, string.Join(' ', statement.Values));
                break;
            case Setting.LevelUnit when LevelUnits.Parse(statement.Values[0]) is null:
                TakeUnit(statement.Values[0]);
                break;
            case Setting.Averaging:
                TakeAveraging(statement);
                break;
            case Setting.Detector or Setting.TraceMode or Setting.Preamplifier or Setting.TraceNames or Setting.LevelUnit or Setting.FrequencyUnit:
                TakeWords(key.Setting, statement);
                break;
            default:
                _numbers.Take(key.Setting, statement with { KeyUnit = unit });
                break;
        }

        return true;
    }

    // "Unit,Hz" is the other axis; "Unit,cabinet 3" is neither.
    private void TakeUnit(string word)
    {
        if (FrequencyUnits.Parse(word) is not null)
        {
            _found.TryAdd(Setting.FrequencyUnit, [word]);
        }
    }

    // "Averages,16" and "Average Type,Power" state two things, and so does "Averages=64 (power)".
    private void TakeAveraging(Statement statement)
    {
        string first = statement.Values[0];
        _numbers.Take(Setting.AverageCount, statement);
        bool counts = StatedNumber.Parse(first) is { Unit: "" };
        bool state = statement.Values.Length == 1 && TraceWords.IsOnOrOff(ForeignWords.ToEnglish(first));
        if (!counts)
        {
            TakeWords(state ? Setting.AveragingState : Setting.Averaging, statement);
        }
    }

    private void TakeWords(Setting setting, Statement statement)
    {
        bool single = setting is Setting.Detector or Setting.TraceMode or Setting.Averaging or Setting.Preamplifier or Setting.AveragingState;
        if (statement.Number is { } number && single)
        {
            _numbered.Take(setting, number, string.Join(' ', statement.Values));
            return;
        }

        Take(setting, statement.Values);
    }

    // The first statement counts; a later one that differs makes the setting unknown rather than the last one true.
    private void Take(Setting setting, ImmutableArray<string> values) =>
        _found[setting] =
            _found.TryGetValue(setting, out ImmutableArray<string> before) && !before.SequenceEqual(values) ? [] : values;

    // "Trace: Max Hold" and "Max Hold,On": keys that tell of a mode only by their value.
    private void TakeMode(Statement statement)
    {
        if (TraceWords.Hold(statement) is { } hold)
        {
            Take(Setting.Hold, [hold]);
        }
        else if (statement.Key == "trace" && statement.Values.All(v => TraceWords.IsModeAlone(v) || TraceWords.IsBlank(v)))
        {
            if (statement.Number is { } number)
            {
                _numbered.Take(Setting.TraceMode, number, string.Join(' ', statement.Values));
            }
            else
            {
                Take(Setting.TraceMode, statement.Values);
            }
        }
    }

    // A hold that is on goes before a mode that knows of none.
    private string? Mode(int trace, int traces)
    {
        string? mode = Worded(Setting.TraceMode, trace, traces) is { } word && TraceWords.IsMode(word) ? word : null;
        return mode?.Contains("hold", StringComparison.OrdinalIgnoreCase) == true ? mode : One(Setting.Hold) ?? mode;
    }

    private string? One(Setting setting) =>
        _found.TryGetValue(setting, out ImmutableArray<string> values) && values.Length > 0 && values.All(v => v == values[0]) ? values[0] : null;

    private string? Worded(Setting setting, int trace, int traces)
    {
        if (_numbered.Of(setting, trace, traces) is { } own)
        {
            return Printable(own);
        }

        if (!_found.TryGetValue(setting, out ImmutableArray<string> values) || values.IsEmpty)
        {
            return null;
        }

        ImmutableArray<string> bare = values.Length == traces ? values : [.. values.Where((v, i) => i == 0 || !SettingFlags.IsFlag(v))];
        if (bare.Length != traces && bare.Length > MostOfOne)
        {
            // As many values as there are traces in some other count of them: nobody can tell which is this one's.
            return bare.All(v => v == bare[0]) ? bare[0] : null;
        }

        return Printable(bare.Length == traces ? bare[trace] : string.Join(' ', bare));
    }

    private static string? Printable(string text)
    {
        string word = ForeignWords.ToEnglish(new string([.. text.Where(c => !char.IsControl(c))]));
        return word.Length is > 0 and <= LongestWord && !word.AsSpan().Trim("-–— ").IsEmpty ? word : null;
    }
}
