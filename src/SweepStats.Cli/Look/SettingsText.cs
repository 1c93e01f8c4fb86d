using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Look;

/// <summary>Receiver settings in words.</summary>
internal static class SettingsText
{
    private const int LongestWord = 40;
    private const string NotStated = "not stated";

    private static readonly ImmutableArray<(string Name, bool IsAwaited, Func<ReceiverSettings, string?> Value)> Settings =
    [
        ("RBW", true, s => Frequency(s.ResolutionBandwidthHz)),
        ("VBW", false, s => Frequency(s.VideoBandwidthHz)),
        ("attenuation", true, s => Number(s.AttenuationDb, " dB")),
        ("reference level", false, s => Number(s.ReferenceLevel, "")),
        ("detector", true, s => Word(s.Detector)),
        ("averaging", false, s => Word(s.Averaging)),
        ("sweep time", false, s => Number(s.SweepTimeSeconds, " s")),
        ("trace mode", false, s => Word(s.TraceMode)),
        ("preamplifier", false, s => Word(s.Preamplifier)),
    ];

    /// <summary>What a file states for all its traces, and "not stated" for what two sweeps must share to be compared.</summary>
    public static string Of(ReceiverSettings file, IReadOnlyCollection<ReceiverSettings> traces) => string.Join(", ", Settings
        .Select(s => (s.Name, Value: s.Value(file) ?? (!s.IsAwaited ? null : traces.Any(t => s.Value(t) is not null) ? "stated by trace" : NotStated)))
        .Where(s => s.Value is not null)
        .Select(s => $"{s.Name} {s.Value}"));

    /// <summary>What a trace states that is not so stated for the whole file; empty where nothing is.</summary>
    public static string Own(ReceiverSettings trace, ReceiverSettings file) =>
        trace == file
            ? ""
            : string.Join(", ", Settings.Where(s => s.Value(trace) is { } own && own != s.Value(file)).Select(s => $"{s.Name} {s.Value(trace)}"));

    private static string? Frequency(double? hertz) => hertz is { } value ? ReadFrequency.Text(value) : null;

    private static string? Number(double? number, string unit) => number is { } value ? value.ToString("G9", CultureInfo.InvariantCulture) + unit : null;

    private static string? Word(string? word) => word is null ? null : PrintedText.Short(word, LongestWord);
}
