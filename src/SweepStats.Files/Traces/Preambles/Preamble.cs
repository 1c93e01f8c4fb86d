using System.Collections.Immutable;
using SweepStats.Files.Traces.Tables;
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
    private readonly Dictionary<Setting, int> _lines = [];
    private readonly SortedDictionary<int, string> _columns = [];
    private readonly NumberedWords _numbered = new();
    private readonly SweepDate _date = new();

    // Asked for each trace of a file, and found by patterns.
    private (DateTimeOffset? At, string? Assumption)? _taken;

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

    /// <summary>Distance of the frequencies as stated.</summary>
    public StatedNumber? Step => Number(Setting.Step);

    /// <summary>In which words the spacing of the frequencies is stated; null where it is not.</summary>
    public string? Spacing => One(Setting.Spacing);

    /// <summary>Names that lines such as "Column 2: Level (dBm)" give to the columns, by their number from 1.</summary>
    public IReadOnlyDictionary<int, string> ColumnNames => _columns;

    /// <summary>Number of points as stated.</summary>
    public int? Points => Number(Setting.Points)?.Value() is { } points and >= 1 and <= int.MaxValue && points == Math.Floor(points) ? (int)points : null;

    /// <summary>The line from 1 that first states a setting; null where none does.</summary>
    public int? LineOf(Setting setting) => _lines.TryGetValue(setting, out int line) ? line : null;

    /// <summary>What one of several traces shows, in the words of the file; null where that is not stated.</summary>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    public string? FormatOf(int trace, int traces) => Worded(Setting.Format, trace, traces);

    /// <summary>Names of the traces; empty where none are stated.</summary>
    public ImmutableArray<string> TraceNames => _found.TryGetValue(Setting.TraceNames, out ImmutableArray<string> names) ? names : [];

    /// <summary>When the sweep was taken, and what was assumed or passed over in finding out.</summary>
    public (DateTimeOffset? At, string? Assumption) Taken => _taken ??= _date.Found;

    /// <summary>What is stated for the one trace of a file.</summary>
    public ReceiverSettings Settings => SettingsOf(0, 1);

    /// <summary>What is stated alike for all of several traces.</summary>
    public ReceiverSettings SettingsOfAll(int traces)
    {
        ReceiverSettings first = SettingsOf(0, traces);
        ReceiverSettings[] others = [.. Enumerable.Range(1, Math.Max(0, traces - 1)).Select(t => SettingsOf(t, traces))];
        return first with
        {
            Detector = others.All(o => o.Detector == first.Detector) ? first.Detector : null,
            Averaging = others.All(o => o.Averaging == first.Averaging) ? first.Averaging : null,
            TraceMode = others.All(o => o.TraceMode == first.TraceMode) ? first.TraceMode : null,
            Preamplifier = others.All(o => o.Preamplifier == first.Preamplifier) ? first.Preamplifier : null,
        };
    }

    /// <summary>Reads the first lines of a text.</summary>
    public static Preamble Read(TraceText text, int lines) => Read(text, 0, lines);

    /// <summary>Reads the lines from one to before another.</summary>
    public static Preamble Read(TraceText text, int from, int to)
    {
        var preamble = new Preamble();
        int header = HeaderLine(text, from, to);
        for (int i = Math.Max(from, to - MostLines); i < to; i++)
        {
            if (text.Line(i).Length <= LongestLine)
            {
                string line = text.LineText(i);
                preamble._date.Line(line, i);
                preamble._line = i + 1;
                preamble._described = line.AsSpan().IndexOfAny(':', '=') > 0 || line.Contains("axis", StringComparison.OrdinalIgnoreCase);
                foreach (Statement statement in StatementReader.Read(line))
                {
                    preamble.Take(statement);
                }

                if (i != header || UnitProse.IsPlural(line))
                {
                    preamble.TakeProse(line);
                }
            }
        }

        return preamble;
    }

    /// <summary>What is stated for one of several traces: a line that lists as many values as there are traces states one for each.</summary>
    public ReceiverSettings SettingsOf(int trace, int traces)
    {
        string? Word(Setting setting) => Worded(setting, trace, traces);

        // Bandwidths without unit are in Hz where the frequencies are; beside frequencies in MHz they may be in anything.
        FrequencyUnit? usual = FrequencyUnit == Traces.FrequencyUnit.Hertz ? FrequencyUnit : null;
        return new ReceiverSettings
        {
            ResolutionBandwidthHz = Number(Setting.ResolutionBandwidth)?.Hertz(usual),
            VideoBandwidthHz = Number(Setting.VideoBandwidth)?.Hertz(usual),
            AttenuationDb = Number(Setting.Attenuation) is { Unit: "" or "dB" or "db" or "DB" } db ? db.Value() : null,
            ReferenceLevel = Number(Setting.ReferenceLevel) is { } level && (level.Unit.Length == 0 || LevelUnits.Parse(level.Unit) is not null) ? level.Value() : null,
            Detector = Word(Setting.Detector),
            Averaging = Word(Setting.Averaging),
            SweepTimeSeconds = Number(Setting.SweepTime)?.Seconds(),
            TraceMode = Mode(trace, traces),
            Preamplifier = Word(Setting.Preamplifier),
        };
    }

    // What heads the columns states the unit of one column each, and not that of the file.
    private static int HeaderLine(TraceText text, int from, int to)
    {
        int last = to - 1;
        while (last >= from && text.Line(last).Trim(" \t,;"u8).IsEmpty)
        {
            last--;
        }

        return last >= from && text.Line(last).IndexOfAny(",;\t"u8) >= 0 && text.Line(last).TrimStart(" \t"u8)[0] is not ((byte)'!' or (byte)'#' or (byte)'%') ? last : -1;
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

    private void TakeRange(ImmutableArray<string> values)
    {
        if (StatedRange.Ends(string.Join(" - ", values.Where(v => v.Length > 0))) is { } ends)
        {
            Take(Setting.Start, [ends[0]]);
            Take(Setting.Stop, [ends[1]]);
        }
    }

    private void Take(Statement statement)
    {
        TakeAxis(statement);
        if (SettingKeys.Find(statement.Key) is not { } key)
        {
            // "Sweep: 401 points": the unit tells what it counts.
            if (StatedNumber.Parse(statement.Values[0]) is { Unit.Length: > 0 } count && StatementReader.PointWords.Contains(count.Unit.ToLowerInvariant()))
            {
                Take(Setting.Points, [count.Digits]);
            }

            TakeMode(statement);
            return;
        }

        string unit = statement.KeyUnit.Length > 0 ? statement.KeyUnit : key.Unit;
        if (key.Setting is Setting.Date or Setting.Time)
        {
            _date.Stated(key.Setting, string.Join(' ', statement.Values));
            return;
        }

        if (key.Setting is Setting.LevelUnit or Setting.FrequencyUnit)
        {
            TakeUnits(key.Setting, statement.Values);
            return;
        }

        if (key.Setting == Setting.Range)
        {
            TakeRange(statement.Values);
            return;
        }

        if (statement.Number is { } number && key.Setting is Setting.Detector or Setting.TraceMode or Setting.Averaging or Setting.Format)
        {
            _numbered.Take(key.Setting, number, string.Join(' ', statement.Values));
            return;
        }

        Take(key.Setting, Joined(statement.Values, unit));
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

    // A number's unit may stand in a field of its own or behind the key.
    private static ImmutableArray<string> Joined(ImmutableArray<string> values, string unit)
    {
        bool bare = StatedNumber.Parse(values[0]) is { Unit: "" };
        if (bare && unit.Length > 0)
        {
            return [values[0] + " " + unit];
        }

        return bare && values.Length > 1 && StatedNumber.Parse(values[1]) is null && values[1].Length > 0 ? [values[0] + " " + values[1]] : values;
    }

    private StatedBound? Bound(Setting end, int side)
    {
        if (Number(end) is { } stated && stated.Value() is not null)
        {
            return new StatedBound(stated, StatedRange.RoundingInUnit(stated), LineOf(end) ?? 0);
        }

        return StatedRange.Bound(Number(Setting.Centre), Number(Setting.Span), side, LineOf(Setting.Centre) ?? 0);
    }

    private StatedNumber? Number(Setting setting) => One(setting) is { } text ? StatedNumber.Parse(text) : null;

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

        if (values.Length != traces && values.Length > MostOfOne)
        {
            // As many values as there are traces in some other count of them: nobody can tell which is this one's.
            return values.All(v => v == values[0]) ? values[0] : null;
        }

        return Printable(values.Length == traces ? values[trace] : string.Join(' ', values));
    }

    private static string? Printable(string text)
    {
        string word = new([.. text.Where(c => !char.IsControl(c))]);
        return word.Length is > 0 and <= LongestWord ? word : null;
    }
}
