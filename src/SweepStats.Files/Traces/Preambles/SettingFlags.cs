namespace SweepStats.Files.Traces.Preambles;

/// <summary>Words beside a value that say how it was chosen, or that there is none.</summary>
internal static class SettingFlags
{
    private static readonly HashSet<string> Flags = new(StringComparer.OrdinalIgnoreCase)
    {
        "auto", "automatic", "man", "manual", "coupled", "uncoupled", "fixed", "set", "user", "default", "actual",
        "automatisch", "manuell", "gekoppelt", "fest", "automatique", "manuel", "couplé", "fixe", "automático",
        "automatico", "manuale",
    };

    private static readonly HashSet<string> None = new(StringComparer.OrdinalIgnoreCase)
    {
        "off", "none", "disabled", "inactive", "false", "n/a", "na", "-", "--", "---", "----", "–", "—", "aus", "kein", "keine",
        "deaktiviert", "désactivé", "desactive", "arrêt", "aucun", "non", "no", "apagado", "spento", "unknown", "undefined",
    };

    // Shapes and bases of filters: "9 kHz (6 dB)", "120 kHz CISPR".
    private static readonly HashSet<string> Filters = new(StringComparer.OrdinalIgnoreCase)
    {
        "6dB", "3dB", "6 dB", "3 dB", "-3 dB", "-6 dB", "-3dB", "-6dB", "cispr", "gauss", "gaussian", "gaussian filter", "mil",
        "normal", "fft", "flattop", "filter", "emi",
    };

    /// <summary>"AUTO", "manual".</summary>
    public static bool IsFlag(string word) => Flags.Contains(word.Trim('(', ')', '[', ']', '<', '>', ' ', '.'));

    /// <summary>"off", "---".</summary>
    public static bool IsNone(string word) => None.Contains(word.Trim());

    /// <summary>
    /// A value without what stands beside it: "AUTO 10 dB" and "10 dB (auto)" are 10 dB; empty where nothing is left.
    /// </summary>
    public static string Without(string value)
    {
        string bare = WithoutRemark(value.Trim());
        int first = bare.IndexOf(' ', StringComparison.Ordinal);
        bare = first > 0 && IsFlag(bare[..first]) ? bare[(first + 1)..].TrimStart() : bare;
        int last = bare.LastIndexOf(' ');
        while (last > 0 && (IsFlag(bare[(last + 1)..]) || Filters.Contains(bare[(last + 1)..])))
        {
            bare = bare[..last].TrimEnd();
            last = bare.LastIndexOf(' ');
        }

        return IsFlag(bare) || Filters.Contains(bare) ? "" : bare;
    }

    // A bracket at the end and nothing behind it: a remark on the value, or its unit.
    private static string WithoutRemark(string value)
    {
        int bracket = value.AsSpan().IndexOfAny('(', '[');
        int end = value.AsSpan().IndexOfAny(')', ']');
        if (bracket <= 0 || end != value.Length - 1)
        {
            return value;
        }

        string inside = value[(bracket + 1)..end].Trim();
        bool unit = FrequencyUnits.Parse(inside) is not null || LevelUnits.Parse(inside) is not null || inside is "s" or "ms";
        return value[..bracket].TrimEnd() + (unit ? " " + inside : "");
    }
}
