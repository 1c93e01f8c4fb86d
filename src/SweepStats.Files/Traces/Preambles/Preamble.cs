using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// What the lines above the data plainly state: receiver settings, units, range and date. Where two lines differ, neither counts.
/// </summary>
internal sealed class Preamble
{
    private const int LongestLine = 400;
    private const int MostLines = 5000;
    private const int MostOfOne = 2;
    private const int LongestWord = 60;

    private readonly Dictionary<Setting, ImmutableArray<string>> _found = [];
    private readonly Dictionary<Setting, int> _lines = [];
    private readonly SortedDictionary<int, string> _columns = [];
    private readonly NumberedWords _numbered = new();
    private readonly StatedNumbers _numbers = new();
    private readonly SweepDate _date = new();

    // Asked for each trace of a file, and found by patterns.
    private StatedTime? _taken;

    private int _line;
    private bool _described;

    private Preamble()
    {
    }

    /// <summary>Unit of level that a line states.</summary>
    public LevelUnit? LevelUnit => One(Setting.LevelUnit) is { } unit ? LevelUnits.Parse(unit) : null;

    /// <summary>Unit of frequency that a line states.</summary>
    public FrequencyUnit? FrequencyUnit => One(Setting.FrequencyUnit) is { } unit ? FrequencyUnits.Parse(unit) : null;

    /// <summary>First frequency as stated.</summary>
    public StatedNumber? Start => StartBound?.Number;

    /// <summary>Last frequency as stated.</summary>
    public StatedNumber? Stop => StopBound?.Number;

    /// <summary>First frequency as stated, or as centre and span make it.</summary>
    public StatedBound? StartBound => Bound(Setting.Start, -1);

    /// <summary>Last frequency as stated, or as centre and span make it.</summary>
    public StatedBound? StopBound => Bound(Setting.Stop, 1);

    /// <summary>
    /// That start and stop are stated, and centre and span of another range; null where they agree, or only one pair is stated.
    /// </summary>
    public string? OtherRange => StatedRange.Other(
        Number(Setting.Start), Number(Setting.Stop), Number(Setting.Centre), Number(Setting.Span));

    /// <summary>What is called "f0", which beside a step is the first frequency.</summary>
    public StatedBound? FirstBound =>
        Bound(Setting.First) is { } first && Step is not null && Number(Setting.Span) is null ? first : null;

    /// <summary>What is called "N" or "count", which beside a first frequency and a step counts the points.</summary>
    public int? Count => Whole(Setting.Count);

    /// <summary>
    /// A line that speaks of frequencies at other than equal steps, or of a sweep from stop to start, where no key states how
    /// they lie; null for none.
    /// </summary>
    public string? OtherSpacing { get; private set; }

    /// <summary>Distance of the frequencies as stated.</summary>
    public StatedNumber? Step => Number(Setting.Step);

    /// <summary>In which words the spacing of the frequencies is stated; null where it is not.</summary>
    public string? Spacing => One(Setting.Spacing);

    /// <summary>Names that lines such as "Column 2: Level (dBm)" give to the columns, by their number from 1.</summary>
    public IReadOnlyDictionary<int, string> ColumnNames => _columns;

    /// <summary>Number of points as stated.</summary>
    public int? Points => Whole(Setting.Points);

    /// <summary>The line from 1 that first states a setting; null where none does.</summary>
    public int? LineOf(Setting setting) => _lines.TryGetValue(setting, out int line) ? line : null;

    /// <summary>What one of several traces shows, in the words of the file; null where that is not stated.</summary>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    public string? FormatOf(int trace, int traces) => Worded(Setting.Format, trace, traces);

    /// <summary>Names of the traces; empty where none are stated.</summary>
    public ImmutableArray<string> TraceNames =>
        _found.TryGetValue(Setting.TraceNames, out ImmutableArray<string> names) ? names : [];

    /// <summary>When the sweep was taken, and what was assumed or passed over in finding out.</summary>
    public StatedTime Taken => _taken ??= _date.Found;

    /// <summary>
    /// What a person should know of what is stated and was not used, or not as it stands: numbers, and the date.
    /// </summary>
    public IEnumerable<string> Remarks =>
        [.. _numbers.Remarks(Bare), .. Taken.Assumption is { } date ? [date] : Array.Empty<string>()];

    /// <summary>Whether the table has decimal commas.</summary>
    public bool BesideDecimalCommas
    {
        init => _numbers.BesideDecimalCommas = value;
    }

    /// <summary>What is stated for the one trace of a file.</summary>
    public ReceiverSettings Settings => SettingsOf(0, 1);

    /// <summary>What is stated alike for all of several traces.</summary>
    public ReceiverSettings SettingsOfAll(int traces)
    {
        ReceiverSettings first = SettingsOf(0, traces);
        return Enumerable.Range(1, Math.Max(0, traces - 1)).Select(t => SettingsOf(t, traces))
            .Aggregate(first, SharedSettings.Of);
    }

    /// <summary>Reads the first lines of a text.</summary>
    public static Preamble Read(TraceText text, int lines) => Read(text, 0, lines);

    /// <summary>Reads the first lines of a text whose table has decimal points or commas.</summary>
    public static Preamble Read(TraceText text, int lines, Separator table) =>
        Read(text, new Preamble { BesideDecimalCommas = table.DecimalMark == (byte)',' }, 0, lines);

    /// <summary>Reads the lines from one to before another.</summary>
    public static Preamble Read(TraceText text, int from, int to) => Read(text, new Preamble(), from, to);

    private static Preamble Read(TraceText text, Preamble preamble, int from, int to)
    {
        var heading = new TraceHeading();
        int valuesAt = -1;
        int header = HeaderLine(text, from, to);
        for (int i = Math.Max(from, to - MostLines); i < to; i++)
        {
            if (text.Line(i).Length <= LongestLine)
            {
                string line = text.LineText(i);
                preamble._date.Line(line, i);
                heading.Pass(line);
                preamble._line = i + 1;
                preamble._described =
                    line.AsSpan().IndexOfAny(':', '=') > 0 || line.Contains("axis", StringComparison.OrdinalIgnoreCase);
                List<Statement> both = i + 1 < to && text.Line(i + 1).Length <= LongestLine
                    ? SettingRows.Read(line, text.LineText(i + 1)) : [];
                foreach (Statement statement in both)
                {
                    preamble.Take(statement with { Line = i + 2 });
                }

                valuesAt = both.Count > 0 ? i + 1 : valuesAt;
                if (both.Count == 0 && i != valuesAt)
                {
                    preamble.Take(line, i + 1, heading.Trace);
                }

                if (i != header || UnitProse.IsPlural(line))
                {
                    preamble.TakeProse(line);
                }

                preamble.OtherSpacing ??= SpacingWords.IsOther(line) && preamble.Spacing is null ? line.Trim() : null;
            }
        }

        return preamble;
    }

    /// <summary>
    /// What is stated for one of several traces: a line that lists as many values as there are traces states one for each.
    /// </summary>
    public ReceiverSettings SettingsOf(int trace, int traces)
    {
        string? Word(Setting setting) => Worded(setting, trace, traces);
        double? Number(Setting setting) => _numbers.Of(setting, trace, traces, Bare);
        int? averages = Number(Setting.AverageCount) is >= 0 and <= int.MaxValue and var count && count == Math.Floor(count)
            ? (int)count : null;
        return new ReceiverSettings
        {
            ResolutionBandwidthHz = Number(Setting.ResolutionBandwidth),
            VideoBandwidthHz = Number(Setting.VideoBandwidth),
            AttenuationDb = Number(Setting.Attenuation),
            ReferenceLevel = Number(Setting.ReferenceLevel),
            Detector = Word(Setting.Detector),
            Averaging = Word(Setting.Averaging) ?? averages?.ToString(CultureInfo.InvariantCulture)
                ?? Word(Setting.AveragingState),
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
        if (!HasWords(line))
        {
            return;
        }

        bool any = false;
        List<Statement> unplain = [];
        foreach (Statement statement in StatementReader.Read(line)
            .Select(s => s with { Line = number, Number = s.Number ?? trace }))
        {
            if (IsUnplain(statement))
            {
                unplain.Add(statement);
            }
            else
            {
                any |= Take(statement);
            }
        }

        // "RBW: 9 kHz VBW: 30 kHz", and sentences that speak of a setting.
        Statement[] remarks = any && unplain.Count == 0 ? [] : [.. RemarkReader.Read(line)];
        foreach (Statement remark in remarks.Length > 0 ? remarks.Select(r => r with { Line = number, Number = trace }) : unplain)
        {
            Take(remark);
        }
    }

    // A row of numbers has no letter but the E of its exponents.
    private static bool HasWords(string line)
    {
        foreach (char c in line)
        {
            if (char.IsLetter(c) && c is not ('e' or 'E'))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsUnplain(Statement statement) =>
        SettingKeys.Find(statement.Key) is { Setting: var setting } && StatedNumbers.Holds(setting)
            && StatedNumbers.IsUnplain(statement);

    // What heads the columns states the unit of one column each, and not that of the file.
    private static int HeaderLine(TraceText text, int from, int to)
    {
        int last = to - 1;
        while (last >= from && text.Line(last).Trim(" \t,;"u8).IsEmpty)
        {
            last--;
        }

        return last >= from && text.Line(last).IndexOfAny(",;\t"u8) >= 0
            && text.Line(last).TrimStart(" \t"u8)[0] is not ((byte)'!' or (byte)'#' or (byte)'%') ? last : -1;
    }

    private void TakeProse(string line)
    {
        foreach (Statement statement in UnitProse.Read(line))
        {
            Take(statement);
        }
    }

    private void TakeAxis(Statement statement)
    {
        // "X,Y (dBm)" heads columns; "X: Frequency (MHz)" describes an axis.
        if ((_described ? AxisStatements.Name(statement) : AxisStatements.Unit(statement)) is not { EndsInSize: false } name)
        {
            return;
        }

        if (AxisStatements.Column(statement) is { } column)
        {
            _columns.TryAdd(column, name.Text);
        }

        if (name.FrequencyUnit is { } frequency)
        {
            Take(Setting.FrequencyUnit, [frequency.Symbol()]);
        }
        else if (name.LevelUnit is { } level && name.Kind == ColumnKind.Level && AxisStatements.Column(statement) is null)
        {
            Take(Setting.LevelUnit, [level.Symbol()]);
        }
    }

    // One unit, or both; what is neither states nothing. "Unit,Hz" is the other axis.
    private void TakeUnits(Setting setting, ImmutableArray<string> values)
    {
        if (StatedUnits.Level(values) is { } level)
        {
            Take(Setting.LevelUnit, [level.Symbol()]);
        }

        if (StatedUnits.Frequency(values) is { } frequency)
        {
            if (setting == Setting.FrequencyUnit)
            {
                Take(Setting.FrequencyUnit, [frequency.Symbol()]);
            }
            else
            {
                _found.TryAdd(Setting.FrequencyUnit, [frequency.Symbol()]);
            }
        }
    }

    private void TakeRange(Statement statement)
    {
        if (StatedRange.Ends(string.Join(" - ", statement.Values.Where(v => v.Length > 0))) is { } ends)
        {
            TakeNumber(Setting.Start, statement with { KeyUnit = "", Values = [ends[0]] });
            TakeNumber(Setting.Stop, statement with { KeyUnit = "", Values = [ends[1]] });
        }
    }

    private bool Take(Statement statement)
    {
        TakeAxis(statement);
        if (ShortKeys.Find(statement) is { } brief)
        {
            TakeNumber(brief, statement);
            if (brief == Setting.First)
            {
                return true;
            }
        }

        if (SettingKeys.Find(statement.Key) is not { } key)
        {
            // "Sweep: 401 points": the unit tells what it counts.
            if (StatedNumber.Parse(statement.Values[0]) is { Unit.Length: > 0 } count
                && StatementReader.PointWords.Contains(count.Unit.ToLowerInvariant()))
            {
                TakeNumber(Setting.Points, statement with { KeyUnit = "", Values = [count.Digits] });
            }

            TakeMode(statement);
            return false;
        }

        string unit = statement.KeyUnit.Length > 0 ? statement.KeyUnit : key.Unit;
        switch (key.Setting)
        {
            case Setting.Date or Setting.Time or Setting.Created:
                _date.Stated(key.Setting, string.Join(' ', statement.Values));
                break;
            case Setting.LevelUnit or Setting.FrequencyUnit:
                TakeUnits(key.Setting, statement.Values);
                break;
            case Setting.Range:
                TakeRange(statement);
                break;
            case Setting.Averaging:
            case Setting.AverageCount when TraceWords.IsOnOrOff(ForeignWords.ToEnglish(statement.Values[0])):
                TakeAveraging(statement);
                break;
            case Setting.Spacing when StatedNumber.Parse(statement.Values[0])?.Hertz() is not null:
                TakeNumber(Setting.Step, statement with { KeyUnit = unit });
                break;
            case Setting.Detector or Setting.TraceMode or Setting.Preamplifier or Setting.TraceNames or Setting.Spacing
                or Setting.Format:
                TakeWords(key.Setting, statement);
                break;
            default:
                TakeNumber(key.Setting, statement with { KeyUnit = unit });
                break;
        }

        return true;
    }

    private void TakeNumber(Setting setting, Statement statement)
    {
        _lines.TryAdd(setting, statement.Line > 0 ? statement.Line : _line);
        _numbers.Take(setting, statement);
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
        bool single = setting is Setting.Detector or Setting.TraceMode or Setting.Averaging or Setting.Preamplifier
            or Setting.AveragingState or Setting.Format;
        if (statement.Number is { } number && single)
        {
            _numbered.Take(setting, number, string.Join(' ', statement.Values));
            return;
        }

        Take(setting, statement.Values);
    }

    // The first statement counts; a later one that differs makes the setting unknown rather than the last one true.
    private void Take(Setting setting, ImmutableArray<string> values)
    {
        _lines.TryAdd(setting, _line);
        _found[setting] =
            _found.TryGetValue(setting, out ImmutableArray<string> before) && !before.SequenceEqual(values) ? [] : values;
    }

    // "Trace: Max Hold" and "Max Hold,On": keys that tell of a mode only by their value.
    private void TakeMode(Statement statement)
    {
        if (TraceWords.Hold(statement) is { } hold)
        {
            Take(Setting.Hold, [hold]);
        }
        else if (statement.Key is "trace" or "mode" or "modus" or "modo"
            && statement.Values.All(v => TraceWords.IsModeAlone(v) || TraceWords.IsBlank(v)))
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

    private int? Whole(Setting setting) =>
        _numbers.Of(setting)?.Value() is { } number and >= 1 and <= int.MaxValue && number == Math.Floor(number)
            ? (int)number : null;

    private StatedBound? Bound(Setting end) =>
        Number(end) is { } stated && stated.Value() is not null
            ? new StatedBound(stated, StatedRange.RoundingInUnit(stated), LineOf(end) ?? 0) : null;

    private StatedBound? Bound(Setting end, int side) =>
        Bound(end) ?? StatedRange.Bound(Number(Setting.Centre), Number(Setting.Span), side, LineOf(Setting.Centre) ?? 0);

    private StatedNumber? Number(Setting setting) => _numbers.Of(setting);

    private string? One(Setting setting) =>
        _found.TryGetValue(setting, out ImmutableArray<string> values) && values.Length > 0 && values.All(v => v == values[0])
            ? values[0] : null;

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

        ImmutableArray<string> bare = values.Length == traces ? values
            : [.. values.Where((v, i) => i == 0 || !SettingFlags.IsFlag(v))];
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
