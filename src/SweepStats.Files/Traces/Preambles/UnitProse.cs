using System.Buffers;
using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Units that a sentence states: "levels in dBµV, frequencies in MHz", "alle Pegel sind in dBm angegeben". The word for the axis
/// must begin its clause: a "reference level in dBm" or a "start frequency in MHz" tells the unit of something else.
/// </summary>
internal static class UnitProse
{
    private static readonly HashSet<string> In = ["in", "en", "em"];

    private static readonly SearchValues<string> InWords =
        SearchValues.Create([" in ", " en ", " em "], StringComparison.OrdinalIgnoreCase);

    // What has units of its own.
    private static readonly SearchValues<string> Elsewhere = SearchValues.Create(
        ["limit", "generator", "source", "marker", "drift", "sensor", "calibrat", "factory", "steps", "per hour", "grenz",
            "quelle", "kalibri", "pro stunde", "antenna", "probe", " was ", "war "], StringComparison.OrdinalIgnoreCase);

    private static readonly HashSet<string> Between =
    [
        "are", "is", "given", "stated", "all", "expressed", "measured", "values", "value", "sind", "ist", "angegeben", "werte",
        "sont", "est", "exprimés", "exprimées", "exprimé", "exprimée", "données", "donnés", "valeurs", "están", "está", "son",
        "expresados", "expresadas", "valores", "sono", "espressi", "espresse", "è", "valori",
    ];

    private static readonly HashSet<string> Openers =
        ["all", "the", "alle", "die", "der", "les", "la", "le", "el", "los", "las", "i", "il", "and", "und", "et", "y", "e",
            "with", "mit", "tous", "toutes", "todos", "todas", "units", "note"];

    private static readonly HashSet<string> Plurals =
        ["levels", "frequencies", "frequenzen", "fréquences", "niveaux", "frecuencias", "niveles", "frequenze", "livelli",
            "amplitudes", "all", "alle"];

    /// <summary>Whether a line speaks of all levels or frequencies, as a header of columns seldom does.</summary>
    public static bool IsPlural(string line) =>
        HasWord(line) && line.Split([' ', '\t', ',', ';']).Any(w => Plurals.Contains(Plain(w)));

    /// <summary>The units of a line, as written; none where it states none.</summary>
    public static IEnumerable<Statement> Read(string line)
    {
        if (!HasWord(line) || line.AsSpan().ContainsAny(Elsewhere))
        {
            yield break;
        }

        string[] words = line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
        for (int i = 1; i + 1 < words.Length; i++)
        {
            if (In.Contains(words[i].ToLowerInvariant()) && Axis(words, i) is { } axis
                && UnitIn(Whole(words, i + 1), axis) is { } unit)
            {
                yield return new Statement(axis == Setting.FrequencyUnit ? "x unit" : "y unit", "", [unit]);
            }
        }
    }

    private static bool HasWord(string line) => line.AsSpan().ContainsAny(InWords);

    private static Setting? Axis(string[] words, int before)
    {
        int at = before - 1;
        while (at > 0 && Between.Contains(Plain(words[at])))
        {
            at--;
        }

        string noun = Plain(words[at]);
        bool begins = at == 0 || Ends(words[at - 1]) || Openers.Contains(Plain(words[at - 1]));
        return !begins ? null
            : ColumnWords.FrequencyInFull.Contains(noun) || noun is "freq" or "f" ? Setting.FrequencyUnit
            : ColumnWords.Level.Contains(noun) || noun is "pegelwerte" or "amplituden" ? Setting.LevelUnit
            : null;
    }

    // "decibels above 1 mW" are one unit.
    private static string Whole(string[] words, int at)
    {
        int last = at;
        while (SpelledDecibels.Begins(words[at]) && last + 1 < words.Length && !Ends(words[last]))
        {
            last++;
        }

        return string.Join(' ', words[at..(last + 1)]);
    }

    private static string? UnitIn(string word, Setting axis)
    {
        string unit = word.TrimEnd('.', ',', ';', ':', '"');
        bool known = axis == Setting.FrequencyUnit ? FrequencyUnits.Parse(unit) is not null : LevelUnits.Parse(unit) is not null;
        return known ? unit : null;
    }

    private static bool Ends(string word) =>
        word[^1] is ',' or ';' or '.' or ':' or '-' or '!' or '#' or '%' or '–' or '"' or '(';

    private static string Plain(string word) => word.Trim(',', ';', '.', ':', '"', '(', '!', '#', '%').ToLowerInvariant();
}
