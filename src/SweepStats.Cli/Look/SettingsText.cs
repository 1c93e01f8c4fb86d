using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Look;

/// <summary>Receiver settings in words.</summary>
internal static class SettingsText
{
    private const int LongestWord = 40;
    private const string Bandwidth = "RBW";
    private const string NotStated = "not stated";

    private static readonly ImmutableArray<(string Name, bool IsAwaited, Func<ReceiverSettings, string?> Value)> Settings =
    [
        (Bandwidth, true, s => Frequency(s.ResolutionBandwidthHz)),
        ("VBW", false, s => Frequency(s.VideoBandwidthHz)),
        ("attenuation", true, s => Number(s.AttenuationDb, " dB")),
        ("reference level", false, s => Number(s.ReferenceLevel, "")),
        ("detector", true, s => Word(s.Detector)),
        ("averaging", false, s => Word(s.Averaging)),
        ("averages", false, Averages),
        ("sweep time", false, s => Number(s.SweepTimeSeconds, " s")),
        ("trace mode", false, s => Word(s.TraceMode)),
        ("preamplifier", false, s => Word(s.Preamplifier)),
        ("source power", false, s => Number(s.SourcePowerDbm, " dBm")),
    ];

    /// <summary>What a file states for all its traces, and "not stated" for what two sweeps must share to be compared.</summary>
    /// <param name="file">What is stated for all.</param>
    /// <param name="traces">What is stated for each.</param>
    /// <param name="network">
    /// Whether they are S-parameters: a network analyser has an IF bandwidth, and no detector to be told.
    /// </param>
    public static string Of(ReceiverSettings file, IReadOnlyCollection<ReceiverSettings> traces, bool network) =>
        string.Join(", ", Settings
        .Select(s => network ? (Name: s.Name == Bandwidth ? "IF bandwidth" : s.Name, IsAwaited: s.Name == Bandwidth, s.Value) : s)
        .Select(s => (s.Name, Value: s.Value(file)
            ?? (!s.IsAwaited ? null : traces.Any(t => s.Value(t) is not null) ? "stated by trace" : NotStated)))
        .Where(s => s.Value is not null)
        .Select(s => $"{s.Name} {s.Value}"));

    /// <summary>What a trace states that is not so stated for the whole file; empty where nothing is.</summary>
    public static string Own(ReceiverSettings trace, ReceiverSettings file) =>
        trace == file
            ? ""
            : string.Join(", ",
                Settings.Where(s => s.Value(trace) is { } own && own != s.Value(file)).Select(s => $"{s.Name} {s.Value(trace)}"));

    // A count that is the averaging's whole wording is not said twice.
    private static string? Averages(ReceiverSettings settings) =>
        settings.Averages is { } count && count.ToString(CultureInfo.InvariantCulture) is var text && text != settings.Averaging
            ? text : null;

    private static string? Frequency(double? hertz) => hertz is { } value ? ReadFrequency.Text(value) : null;

    private static string? Number(double? number, string unit) =>
        number is { } value ? value.ToString("G9", CultureInfo.InvariantCulture) + unit : null;

    private static string? Word(string? word) => word is null ? null : PrintedText.Short(word, LongestWord);
}
