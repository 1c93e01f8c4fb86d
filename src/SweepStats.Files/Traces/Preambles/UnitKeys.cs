using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Keys that state the unit of an axis, in whatever order their words stand: "freq unit", "xunits", "einheit x", "amplitude
/// unit".
/// </summary>
internal static class UnitKeys
{
    // Glued words are looked for by their ends, the longest first.
    private static readonly string[] Units =
        ["einheiten", "einheit", "unidades", "unidad", "units", "unités", "unites", "unit", "unité", "unite", "unità",
            "unita", "dimension"];

    private static readonly HashSet<string> Frequency =
        [.. ColumnWords.Frequency, "x", "abscissa", "abszisse", "abscisse", "ascissa", "abscisa", "horizontal", "stim"];

    private static readonly HashSet<string> Level =
        [.. ColumnWords.Level, "y", "data", "daten", "ordinate", "ordonnée", "ordinata", "ordenada", "vertical"];

    private static readonly HashSet<string> Fillers =
        ["axis", "achse", "axe", "eje", "asse", "of", "the", "der", "des", "de", "del", "della", "la", "d", "en", "in",
            "values", "werte"];

    /// <summary>The unit that a key is about; null where it is about none, or about that of something else.</summary>
    /// <param name="key">Lower-case words.</param>
    public static Setting? Find(string key)
    {
        if (!(key.Contains("uni", StringComparison.Ordinal) || key.Contains("einheit", StringComparison.Ordinal)
            || key.Contains("dimension", StringComparison.Ordinal)))
        {
            return null;
        }

        bool unit = false;
        Setting? found = null;
        foreach (string word in key.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string end = Array.Find(Units, u => word.EndsWith(u, StringComparison.Ordinal)) ?? "";
            string axis = word[..^end.Length];
            unit |= end.Length > 0;
            if (axis.Length == 0 || Fillers.Contains(axis))
            {
                continue;
            }

            Setting? here = Frequency.Contains(axis) ? Setting.FrequencyUnit : Level.Contains(axis) ? Setting.LevelUnit : null;
            if (here is null || (found ?? here) != here)
            {
                return null;
            }

            found = here;
        }

        return unit ? found ?? Setting.LevelUnit : null;
    }
}
