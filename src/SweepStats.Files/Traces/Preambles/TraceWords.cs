using System.Globalization;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// The words by which files say how a trace came about. They are recognised and kept as written; what they mean for noise is not
/// decided here.
/// </summary>
internal static class TraceWords
{
    private const int MostWords = 4;

    // Parts of words suffice behind a key that can mean nothing else. What is viewed or blank says nothing of how it came about.
    private static readonly string[] ModeParts = ["hold", "write", "aver", "max", "min", "norm", "clear", "clrw", "avg"];

    private static readonly HashSet<string> Detectors =
    [
        "peak", "pk", "pos", "positive", "neg", "negative", "rms", "sample", "samp", "average", "avg", "aver", "ave", "av",
        "mean", "quasi", "quasipeak", "qp",
        "normal", "norm", "auto", "autopeak", "cispr", "max", "maximum", "min", "minimum",
    ];

    private static readonly HashSet<string> Modes =
    [
        "max", "maximum", "min", "minimum", "peak", "hold", "maxhold", "minhold", "maxh", "minh", "clear", "write", "clrw",
        "average", "averaging", "averaged",
        "avg", "aver", "mean", "log", "power", "rms", "normal",
    ];

    private static readonly HashSet<string> PlainHolds = ["hold", "trace hold", "hold mode"];

    private static readonly HashSet<string> Holds =
        [.. PlainHolds, "max hold", "maxhold", "maximum hold", "min hold", "minhold", "minimum hold", "peak hold"];

    private static readonly HashSet<string> On = ["on", "true", "yes", "enabled", "active"];

    private static readonly HashSet<string> OnOrOff = [.. On, "off", "false", "no", "none", "disabled", "inactive"];

    /// <summary>Whether a value behind a key such as "trace mode" tells what the trace keeps.</summary>
    public static bool IsMode(string value) => ModeParts.Any(w => value.Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// Whether a value is made of nothing but words for what a trace keeps, so that it tells it behind a key as plain as "trace".
    /// </summary>
    public static bool IsModeAlone(string value) => AreAll(value, Modes);

    /// <summary>Whether a value says whether something is on, and no more.</summary>
    public static bool IsOnOrOff(string value) => OnOrOff.Contains(value.Trim().ToLowerInvariant());

    /// <summary>Whether the trace is not shown, and so not the one in a file.</summary>
    public static bool IsBlank(string value) => value.Contains("blank", StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// The hold that a statement switches on, in the words of the file: "Max Hold" of <c>Max Hold,On</c>, "Max Hold" of <c>Hold:
    /// Max</c>; null where
    /// it switches none on.
    /// </summary>
    public static string? Hold(Statement statement)
    {
        if (!Holds.Contains(statement.Key) || statement.Values is not [var value])
        {
            return null;
        }

        if (On.Contains(value.ToLowerInvariant()) || StatedNumber.Parse(value)?.Value() > 0)
        {
            return statement.Written;
        }

        return !PlainHolds.Contains(statement.Key) || !IsModeAlone(value) ? null
            : value.Contains("hold", StringComparison.OrdinalIgnoreCase) ? value
            : value + " " + statement.Written;
    }

    /// <summary>
    /// Where a line of words alone has its value, such as <c>Detector RMS</c>, <c>Trace Mode Max Hold</c>, <c>Trace 1 Max
    /// Hold</c> or
    /// <c>MAXHOLD ON</c>: the place of its first word; null for any other line.
    /// </summary>
    /// <param name="words">The words of the line.</param>
    public static int? ValueAt(string[] words)
    {
        for (int at = Math.Min(words.Length - 1, MostWords); at > 0; at--)
        {
            if (words.Length - at <= MostWords && IsValue(words[..at], words[at..]))
            {
                return at;
            }
        }

        return null;
    }

    private static bool IsValue(string[] key, string[] value)
    {
        bool numbered = Array.Exists(key, IsCount);
        string words = string.Join(' ', key.Where(w => !IsCount(w))).ToLowerInvariant();
        return SettingKeys.Find(words)?.Setting switch
        {
            Setting.Detector => Array.TrueForAll(value, w => AreAll(w, Detectors)),
            Setting.TraceMode => Array.TrueForAll(value, w => AreAll(w, Modes)),
            _ when words == "trace" => numbered && Array.TrueForAll(value, w => AreAll(w, Modes)),
            _ => Holds.Contains(words) && value is [var only] && OnOrOff.Contains(only.ToLowerInvariant()),
        };
    }

    private static bool IsCount(string word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out _);

    private static bool AreAll(string text, HashSet<string> known)
    {
        string[] words = text.ToLowerInvariant().Split([' ', '-', '/', '_', '+'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length is > 0 and <= MostWords && Array.TrueForAll(words, known.Contains);
    }
}
