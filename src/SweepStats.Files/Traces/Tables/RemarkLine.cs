using System.Text;
using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Tells lines that somebody wrote as a remark from headers, settings and rows.</summary>
internal static class RemarkLine
{
    private const int Longest = 400;
    private const int FewestWords = 3;

    private static readonly HashSet<string> Openings =
    [
        "note", "notes", "nb", "remark", "remarks", "comment", "comments", "bemerkung", "bemerkungen", "hinweis", "anmerkung",
        "anm", "kommentar", "achtung", "remarque", "nota", "commentaire", "comentario", "osservazione", "attention",
    ];

    private static readonly string[] Subjects = ["trace", "sweep", "kurve", "spur", "messung", "balayage", "courbe", "barrido",
        "traza", "traccia", "polari", "unit", "einheit"];

    /// <summary>
    /// Whether a line is a remark: it begins with a word such as "Note", or holds words as a sentence does; it states no setting
    /// and no unit.
    /// </summary>
    public static bool Is(ReadOnlySpan<byte> line)
    {
        if (line.Length > Longest)
        {
            return false;
        }

        string text = Encoding.UTF8.GetString(line);
        string[] words = Words(text);
        return words.Length > 0 && (Openings.Contains(words[0].ToLowerInvariant()) || words.Count(IsProse) >= FewestWords)
            && !Array.Exists(words, w => FrequencyUnits.Parse(w) is not null || LevelUnits.Parse(w) is not null)
            && !StatementReader.Read(text).Any(s => SettingKeys.Find(s.Key) is not null);
    }

    /// <summary>Whether a line begins with a word such as "Note".</summary>
    public static bool IsOpened(ReadOnlySpan<byte> line) =>
        line.Length <= Longest && Words(Encoding.UTF8.GetString(line)) is [var first, ..]
            && Openings.Contains(first.ToLowerInvariant());

    /// <summary>Whether a line speaks of a trace or a sweep.</summary>
    public static bool TellsOfTraces(ReadOnlySpan<byte> line)
    {
        string text = Encoding.UTF8.GetString(line);
        return Array.Exists(Subjects, s => text.Contains(s, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether a line speaks of what was changed between rows: a specimen, an attenuator, a setting.</summary>
    public static bool TellsOfAChange(ReadOnlySpan<byte> line)
    {
        string text = Encoding.UTF8.GetString(line);
        return UnlikeTraces.Of(text) is not null
            || Array.Exists(Changes, s => text.Contains(s, StringComparison.OrdinalIgnoreCase));
    }

    private static readonly string[] Changes = ["in place", "switched", "from here", "att ", "attenuat", "rbw", "vbw", "preamp",
        "ab hier", "eingesetzt", "gewechselt", "à partir", "a partir", "da qui"];

    /// <summary>Whether a column is one of remarks, in which a number may stand too.</summary>
    public static bool IsRemarkName(string name) => Array.Exists(Words(name), w => Openings.Contains(w.ToLowerInvariant()));

    /// <summary>
    /// Whether a line of comment speaks of a frequency, as in "from 30 MHz on", and so heads no column of frequencies.
    /// </summary>
    public static bool NamesAFrequency(ReadOnlySpan<byte> line)
    {
        if (line.Length > Longest)
        {
            return false;
        }

        string[] words = Words(Encoding.UTF8.GetString(line));
        return words.Zip(words.Skip(1)).Any(pair => char.IsAsciiDigit(pair.First[^1]) && char.IsAsciiDigit(pair.First[0])
            && FrequencyUnits.Parse(pair.Second) is not null);
    }

    private static string[] Words(string text) =>
        text.Split([' ', '\t', ',', ';', ':', '!', '#', '%', '"', '(', ')', '[', ']', '=', '/'],
            StringSplitOptions.RemoveEmptyEntries);

    // Words as sentences have them, in small letters; the names of columns mostly begin with a large one.
    private static bool IsProse(string word) =>
        word.Length > 1 && word.All(c => char.IsLower(c) || c is '.' or '\'' or '-' or '!');
}
