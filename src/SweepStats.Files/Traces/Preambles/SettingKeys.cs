namespace SweepStats.Files.Traces.Preambles;

/// <summary>How settings are worded above the data: trade words only, in lower case, digits and signs left out. What is worded otherwise counts as not stated.</summary>
internal static class SettingKeys
{
    private static readonly (Setting Setting, string[] Words)[] Known =
    [
        (Setting.ResolutionBandwidth, ["rbw", "resolution bandwidth", "res bw", "resolution bw", "if bandwidth", "ifbw", "if bw"]),
        (Setting.VideoBandwidth, ["vbw", "video bandwidth", "video bw"]),
        (Setting.Attenuation, ["attenuation", "rf attenuation", "input attenuation", "rf att", "att"]),
        (Setting.ReferenceLevel, ["reference level", "ref level", "ref lvl"]),
        (Setting.Detector, [
            "detector", "detectors", "detector type", "detector mode", "trace detector", "detection", "detektor",
            "det", "det type", "det mode",
        ]),
        (Setting.Averaging, ["averaging", "average type", "averaging type", "average mode", "averages", "avg type"]),
        (Setting.SweepTime, ["sweep time", "swt", "sweeptime"]),
        (Setting.TraceMode, ["trace mode", "trace type", "trace function", "function"]),
        (Setting.Preamplifier, ["preamp", "preamplifier", "preamp state", "pre amp", "preamplifier state"]),
        (Setting.LevelUnit, ["unit", "level unit", "y unit", "data unit", "amplitude unit", "y axis unit", "y axis units", "y units"]),
        (Setting.FrequencyUnit, ["x unit", "frequency unit", "x axis unit", "x axis units", "x units"]),
        (Setting.Start, ["start", "start frequency", "start freq", "xstart", "x start", "fstart", "f start"]),
        (Setting.Stop, ["stop", "stop frequency", "stop freq", "xstop", "x stop", "fstop", "f stop"]),
        (Setting.Points, ["points", "number of points", "num points", "numberpoints", "sweep points", "trace points", "values", "no of points"]),
        (Setting.TraceNames, ["trace name", "trace names"]),
        (Setting.Date, ["date", "datum", "date time", "timestamp", "measured", "measured on", "acquired", "recorded", "taken", "taken at", "time stamp"]),
        (Setting.Time, ["time", "time of day", "uhrzeit"]),
    ];

    private static readonly Dictionary<string, Setting> Words =
        Known.SelectMany(k => k.Words.Select(w => (w, k.Setting))).ToDictionary(p => p.w, p => p.Setting, StringComparer.Ordinal);

    /// <summary>The setting that a key names, and the unit that its last word may be, as in "sweep time ms".</summary>
    public static (Setting Setting, string Unit)? Find(string key)
    {
        if (Words.TryGetValue(key, out Setting setting))
        {
            return (setting, "");
        }

        if ((UnitKeys.Find(key) ?? RangeKeys.Find(key)) is { } other)
        {
            return (other, "");
        }

        int last = key.LastIndexOf(' ');
        return last > 0 && IsUnit(key[(last + 1)..]) && Worded(key[..last]) is { } before && before is not (Setting.LevelUnit or Setting.FrequencyUnit)
            ? (before, key[(last + 1)..])
            : null;
    }

    private static Setting? Worded(string key) => Words.TryGetValue(key, out Setting setting) ? setting : RangeKeys.Find(key);

    private static bool IsUnit(string word) => word is "s" or "ms" or "us" or "µs" || FrequencyUnits.Parse(word) is not null || LevelUnits.Parse(word) is not null;
}
