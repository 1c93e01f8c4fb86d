using System.Collections.Immutable;
using System.Globalization;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>The words by which files say how a trace came about. They are recognised and kept as written; what they mean for noise is not decided here.</summary>
internal static class TraceWords
{
    private const int MostWords = 4;

    // Parts of words suffice behind a key that can mean nothing else. What is viewed or blank says nothing of how it came about.
    private static readonly string[] ModeParts = ["hold", "write", "aver", "max", "min", "norm", "clear", "clrw", "avg"];

    private static readonly HashSet<string> Detectors =
    [
        "peak", "pk", "pos", "positive", "neg", "negative", "rms", "sample", "samp", "average", "avg", "aver", "ave", "av", "mean", "quasi", "quasipeak", "qp",
        "normal", "norm", "auto", "autopeak", "cispr", "max", "maximum", "min", "minimum",
    ];

    private static readonly HashSet<string> Modes =
    [
        "max", "maximum", "min", "minimum", "peak", "hold", "maxhold", "minhold", "maxh", "minh", "clear", "write", "clrw", "average", "averaging", "averaged",
        "avg", "aver", "mean", "log", "power", "rms", "normal",
    ];

    private static readonly HashSet<string> Holds = ["max hold", "maxhold", "maximum hold", "min hold", "minhold", "minimum hold", "peak hold", "hold", "trace hold", "hold mode"];

    private static readonly HashSet<string> On = ["on", "true", "yes", "enabled", "active"];

    private static readonly HashSet<string> Off = ["off", "false", "no", "none", "disabled", "inactive"];

    /// <summary>Whether a value behind a key such as "trace mode" tells what the trace keeps.</summary>
    public static bool IsMode(string value) => ModeParts.Any(w => value.Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a value is made of nothing but words for what a trace keeps, so that it tells it behind a key as plain as "trace".</summary>
    public static bool IsModeAlone(string value) => AreAll(value, Modes);

    /// <summary>Whether the trace is not shown, and so not the one in a file.</summary>
    public static bool IsBlank(string value) => value.Contains("blank", StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// The hold that a statement switches on, in the words of the file: "Max Hold" of <c>Max Hold,On</c>, "Max Hold" of <c>Hold: Max</c>; null where it switches none on.
    /// </summary>
    public static string? Hold(Statement statement)
    {
        string value = statement.Values.Length == 1 && Holds.Contains(statement.Key) ? statement.Values[0] : "";
        string lower = value.ToLowerInvariant();
        if (value.Length == 0 || Off.Contains(lower) || StatedNumber.Parse(value) is { } none && none.Value() is not > 0)
        {
            return null;
        }

        bool plain = statement.Key is "hold" or "trace hold" or "hold mode";
        return On.Contains(lower) || StatedNumber.Parse(value) is not null ? statement.Written
            : !plain || !IsModeAlone(value) ? null
            : lower.Contains("hold", StringComparison.Ordinal) ? value
            : value + " " + statement.Written;
    }

    /// <summary>Where a line of words alone, such as <c>Detector RMS</c>, <c>Trace Mode Max Hold</c> or <c>MAXHOLD ON</c>, has its value: the place of its first word; null for any other.</summary>
    /// <param name="words">The words of the line.</param>
    public static int? ValueAt(string[] words)
    {
        for (int at = Math.Min(words.Length - 1, MostWords); at > 0; at--)
        {
            string key = string.Join(' ', words[..at].Where(w => !int.TryParse(w, NumberStyles.None, CultureInfo.InvariantCulture, out _))).ToLowerInvariant();
            string[] rest = words[at..];
            bool known = SettingKeys.Find(key)?.Setting switch
            {
                Setting.Detector => Array.TrueForAll(rest, w => AreAll(w, Detectors)),
                Setting.TraceMode => Array.TrueForAll(rest, w => AreAll(w, Modes)),
                _ => Holds.Contains(key) && rest.Length == 1 && (On.Contains(rest[0].ToLowerInvariant()) || Off.Contains(rest[0].ToLowerInvariant())),
            };
            if (known && rest.Length <= MostWords)
            {
                return at;
            }
        }

        return null;
    }

    private static bool AreAll(string text, HashSet<string> known)
    {
        ImmutableArray<string> words = [.. text.ToLowerInvariant().Split([' ', '-', '/', '_', '+'], StringSplitOptions.RemoveEmptyEntries)];
        return words.Length is > 0 and <= MostWords && words.All(known.Contains);
    }
}
