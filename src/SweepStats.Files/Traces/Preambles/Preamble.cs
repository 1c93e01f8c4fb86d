using System.Globalization;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// What the lines above the data plainly state: receiver settings, units, range and date. Where two lines differ, neither counts.
/// </summary>
internal sealed class Preamble
{
    private readonly StatedSettings _stated;

    // Asked for each trace of a file, and found by patterns.
    private StatedTime? _taken;

    private Preamble(StatedSettings stated) => _stated = stated;

    /// <summary>Unit of level that a line states.</summary>
    public LevelUnit? LevelUnit => _stated.Words.One(Setting.LevelUnit) is { } unit ? LevelUnits.Parse(unit) : null;

    /// <summary>Unit of frequency that a line states.</summary>
    public FrequencyUnit? FrequencyUnit =>
        _stated.Words.One(Setting.FrequencyUnit) is { } unit ? FrequencyUnits.Parse(unit) : null;

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
    public string? OtherSpacing => _stated.OtherSpacing;

    /// <summary>Distance of the frequencies as stated.</summary>
    public StatedNumber? Step => Number(Setting.Step);

    /// <summary>In which words the spacing of the frequencies is stated; null where it is not.</summary>
    public string? Spacing => _stated.Words.One(Setting.Spacing);

    /// <summary>Names that lines such as "Column 2: Level (dBm)" give to the columns, by their number from 1.</summary>
    public IReadOnlyDictionary<int, string> ColumnNames => _stated.Columns;

    /// <summary>Number of points as stated.</summary>
    public int? Points => Whole(Setting.Points);

    /// <summary>The line from 1 that first states a setting; null where none does.</summary>
    public int? LineOf(Setting setting) => _stated.LineOf(setting);

    /// <summary>What one of several traces shows, in the words of the file; null where that is not stated.</summary>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    public string? FormatOf(int trace, int traces) => _stated.Words.Of(Setting.Format, trace, traces);

    /// <summary>Names of the traces; empty where none are stated.</summary>
    public ImmutableArray<string> TraceNames => _stated.Words.All(Setting.TraceNames);

    /// <summary>When the sweep was taken, and what was assumed or passed over in finding out.</summary>
    public StatedTime Taken => _taken ??= _stated.Date.Found;

    /// <summary>
    /// What a person should know of what is stated and was not used, or not as it stands: numbers, and the date.
    /// </summary>
    public IEnumerable<string> Remarks =>
        [.. _stated.Numbers.Remarks(Bare), .. Taken.Assumption is { } date ? [date] : Array.Empty<string>()];

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
        Read(text, new StatedSettings { Numbers = { BesideDecimalCommas = table.DecimalMark == (byte)',' } }, 0, lines);

    /// <summary>Reads the lines from one to before another.</summary>
    public static Preamble Read(TraceText text, int from, int to) => Read(text, new StatedSettings(), from, to);

    private static Preamble Read(TraceText text, StatedSettings stated, int from, int to) =>
        new(new PreambleLines(text, stated).Read(from, to));

    /// <summary>
    /// What is stated for one of several traces: a line that lists as many values as there are traces states one for each.
    /// </summary>
    public ReceiverSettings SettingsOf(int trace, int traces)
    {
        string? Word(Setting setting) => _stated.Words.Of(setting, trace, traces);
        double? Number(Setting setting) => _stated.Numbers.Of(setting, trace, traces, Bare);
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

    // A hold that is on goes before a mode that knows of none.
    private string? Mode(int trace, int traces)
    {
        string? mode = _stated.Words.Of(Setting.TraceMode, trace, traces) is { } word && TraceWords.IsMode(word) ? word : null;
        return mode?.Contains("hold", StringComparison.OrdinalIgnoreCase) == true ? mode
            : _stated.Words.One(Setting.Hold) ?? mode;
    }

    private int? Whole(Setting setting) =>
        _stated.Numbers.Of(setting)?.Value() is { } number and >= 1 and <= int.MaxValue && number == Math.Floor(number)
            ? (int)number : null;

    private StatedBound? Bound(Setting end) =>
        Number(end) is { } stated && stated.Value() is not null
            ? new StatedBound(stated, StatedRange.RoundingInUnit(stated), LineOf(end) ?? 0) : null;

    private StatedBound? Bound(Setting end, int side) =>
        Bound(end) ?? StatedRange.Bound(Number(Setting.Centre), Number(Setting.Span), side, LineOf(Setting.Centre) ?? 0);

    private StatedNumber? Number(Setting setting) => _stated.Numbers.Of(setting);
}
