using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>Takes each statement of the lines above the data to where it belongs: words, numbers, columns or the date.</summary>
internal sealed class StatedSettings
{
    private readonly Dictionary<Setting, int> _lines = [];
    private readonly SortedDictionary<int, string> _columns = [];

    private int _line;
    private bool _described;

    /// <summary>What is stated in words.</summary>
    public StatedWords Words { get; } = new();

    /// <summary>What is stated in numbers.</summary>
    public StatedNumbers Numbers { get; } = new();

    /// <summary>What is stated of day and time.</summary>
    public SweepDate Date { get; } = new();

    /// <summary>Names that lines give to the columns, by their number from 1.</summary>
    public IReadOnlyDictionary<int, string> Columns => _columns;

    /// <summary>
    /// A line that speaks of frequencies at other than equal steps, where no key states how they lie; null for none.
    /// </summary>
    public string? OtherSpacing { get; private set; }

    /// <summary>The line from 1 that first states a setting; null where none does.</summary>
    public int? LineOf(Setting setting) => _lines.TryGetValue(setting, out int line) ? line : null;

    /// <summary>Begins a line.</summary>
    /// <param name="line">Its text.</param>
    /// <param name="index">Its place from 0.</param>
    public void Begin(string line, int index)
    {
        Date.Line(line, index);
        _line = index + 1;
        _described = line.AsSpan().IndexOfAny(':', '=') > 0 || line.Contains("axis", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Ends a line, once its statements are taken.</summary>
    public void End(string line) =>
        OtherSpacing ??= SpacingWords.IsOther(line) && Words.One(Setting.Spacing) is null ? line.Trim() : null;

    /// <summary>Takes a statement.</summary>
    /// <returns>Whether its key is that of a setting.</returns>
    public bool Take(Statement statement)
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
            TakeCount(statement);
            TakeMode(statement);
            return false;
        }

        string unit = statement.KeyUnit.Length > 0 ? statement.KeyUnit : key.Unit;
        Take(key.Setting, statement, unit);
        return true;
    }

    private void Take(Setting setting, Statement statement, string unit)
    {
        switch (setting)
        {
            case Setting.Date or Setting.Time or Setting.Created:
                Date.Stated(setting, string.Join(' ', statement.Values));
                break;
            case Setting.LevelUnit or Setting.FrequencyUnit:
                TakeUnits(setting, statement.Values);
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
                TakeWords(setting, statement);
                break;
            default:
                TakeNumber(setting, statement with { KeyUnit = unit });
                break;
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
            TakeWords(Setting.FrequencyUnit, [frequency.Symbol()]);
        }
        else if (name.LevelUnit is { } level && name.Kind == ColumnKind.Level && AxisStatements.Column(statement) is null)
        {
            TakeWords(Setting.LevelUnit, [level.Symbol()]);
        }
    }

    // One unit, or both; what is neither states nothing. "Unit,Hz" is the other axis.
    private void TakeUnits(Setting setting, ImmutableArray<string> values)
    {
        if (StatedUnits.Level(values) is { } level)
        {
            TakeWords(Setting.LevelUnit, [level.Symbol()]);
        }

        if (StatedUnits.Frequency(values) is { } frequency)
        {
            if (setting == Setting.FrequencyUnit)
            {
                TakeWords(Setting.FrequencyUnit, [frequency.Symbol()]);
            }
            else
            {
                Words.TakeUnlessStated(Setting.FrequencyUnit, [frequency.Symbol()]);
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

    // "Sweep: 401 points": the unit tells what it counts.
    private void TakeCount(Statement statement)
    {
        if (StatedNumber.Parse(statement.Values[0]) is { Unit.Length: > 0 } count
            && StatementReader.PointWords.Contains(count.Unit.ToLowerInvariant()))
        {
            TakeNumber(Setting.Points, statement with { KeyUnit = "", Values = [count.Digits] });
        }
    }

    private void TakeNumber(Setting setting, Statement statement)
    {
        _lines.TryAdd(setting, statement.Line > 0 ? statement.Line : _line);
        Numbers.Take(setting, statement);
    }

    // "Averages,16" and "Average Type,Power" state two things, and so does "Averages=64 (power)".
    private void TakeAveraging(Statement statement)
    {
        string first = statement.Values[0];
        Numbers.Take(Setting.AverageCount, statement);
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
            Words.Take(setting, number, statement);
            return;
        }

        TakeWords(setting, statement.Values);
    }

    private void TakeWords(Setting setting, ImmutableArray<string> values)
    {
        _lines.TryAdd(setting, _line);
        Words.Take(setting, values);
    }

    // "Trace: Max Hold" and "Max Hold,On": keys that tell of a mode only by their value.
    private void TakeMode(Statement statement)
    {
        if (TraceWords.Hold(statement) is { } hold)
        {
            TakeWords(Setting.Hold, [hold]);
        }
        else if (statement.Key is "trace" or "mode" or "modus" or "modo"
            && statement.Values.All(v => TraceWords.IsModeAlone(v) || TraceWords.IsBlank(v)))
        {
            TakeWords(Setting.TraceMode, statement);
        }
    }
}
