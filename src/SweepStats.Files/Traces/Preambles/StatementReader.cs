using System.Collections.Concurrent;
using System.Globalization;
using System.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Cuts a line above the data into statements: <c>RBW,9000,Hz</c>, <c>! RBW: 9 kHz VBW: 30 kHz</c>, <c>Start Freq,1e5,Stop
/// Freq,3e7</c>, <c>VBW (kHz) = 10</c>, <c>Detector;Peak;Normal</c>, <c>Ref Level -20 dBm</c>, <c>Detector RMS</c>.
/// </summary>
/// <remarks>Takes time in proportion to the line, whatever stands in it.</remarks>
internal static class StatementReader
{
    /// <summary>Words behind a number of points.</summary>
    public static readonly HashSet<string> PointWords = ["points", "pts", "punkte", "messpunkte", "puntos", "punti"];

    private static readonly HashSet<string> Wordy =
        ["det", "detector", "detektor", "detecteur", "detection", "trace", "maxhold", "minhold", "hold"];

    // Files of a campaign state the same, line by line.
    private const int MostKept = 1000;
    private const int LongestKept = 120;

    private static readonly ConcurrentDictionary<string, Statement[]> Kept = new(StringComparer.Ordinal);

    /// <summary>
    /// The statements of a line; none where it states nothing. Those of the first thousand short lines are kept.
    /// </summary>
    public static List<Statement> Read(string line)
    {
        if (line.Length > LongestKept)
        {
            return Cut(line);
        }

        if (!Kept.TryGetValue(line, out Statement[]? known))
        {
            known = [.. Cut(line)];
            if (Kept.Count < MostKept)
            {
                Kept.TryAdd(line, known);
            }
        }

        return [.. known];
    }

    private static List<Statement> Cut(string line)
    {
        List<Statement> found = [];
        string? key = null;
        List<string> values = [];
        List<string> pieces = LinePieces.Of(line);
        for (int i = 0; i < pieces.Count; i++)
        {
            string piece = pieces[i];
            if (values.Count > 0 && PointsIn(piece) is { } points)
            {
                found.Add(new Statement("points", "", [points]));
                continue;
            }

            if (key is not null && !Begins(key, values, pieces, i))
            {
                values.Add(piece);
                continue;
            }

            Close(key, values, found);
            piece = Inner(piece);
            bool named = IsNamed(piece);
            int colon = piece.AsSpan().IndexOfAny(':', '=');
            key = named ? piece[..colon].TrimEnd() : piece;
            values = named && piece[(colon + 1)..].Trim() is { Length: > 0 } value ? [value] : [];
        }

        Close(key, values, found);
        return found;
    }

    // "CF=100 MHz, SPAN=10 MHz, 401 points": the unit tells what it counts.
    private static string? PointsIn(string piece) =>
        piece.Length > 0 && char.IsAsciiDigit(piece[0]) && StatedNumber.Parse(piece) is { Unit.Length: > 0 } count
            && PointWords.Contains(count.Unit.ToLowerInvariant())
            ? count.Digits : null;

    // Whether a piece behind a key and its values is the next key.
    private static bool Begins(string key, List<string> values, List<string> pieces, int i)
    {
        string piece = pieces[i];
        if (IsNamed(piece))
        {
            return true;
        }

        // Most pieces are values: only what starts with a letter can be a key.
        if (piece.Length < 2 || !char.IsLetter(piece[0]))
        {
            return false;
        }

        bool number = i + 1 < pieces.Count && IsNumber(pieces[i + 1]);
        return (values.Count > 0 && IsNumber(values[0]) && IsKey(piece) && number)
            || StatesNumber(piece)
            || StatesWord(piece)
            || (i + 1 < pieces.Count && SettingKeys.Find(Words(piece)) is not null
                && IsNextKey(key, piece, pieces[i + 1], number));
    }

    // "Detector,Average,Peak" lists what three traces have; "Preamplifier,off,Averaging,off" states two things.
    private static bool IsNextKey(string key, string piece, string next, bool number)
    {
        Setting? open = SettingKeys.Find(Words(key))?.Setting;
        bool wordy =
            open is null or Setting.Detector or Setting.TraceMode or Setting.Averaging or Setting.TraceNames or Setting.Hold;
        return SettingKeys.IsPlain(Words(piece)) ? number || IsWord(next) : number || (!wordy && IsWord(next));
    }

    // A field that is nothing but words, unlike the titles of columns, which have units in brackets.
    private static bool IsWord(string field) =>
        field.Length > 0 && field.AsSpan().IndexOfAny('(', '[') < 0 && SettingKeys.Find(Words(field)) is null;

    // "Vid BW 1 MHz" as a piece of its own; "Sweep 60 ms" too, and "Sweep 3" not.
    private static bool StatesNumber(string piece)
    {
        int blank = BeforeNumber(piece);
        return blank > 0 && SettingKeys.Find(Words(piece[..blank])) is not null
            && (SettingKeys.IsPlain(Words(piece[..blank])) || PointWords.Contains(Words(piece[..blank])) || StatesUnit(piece));
    }

    // "Det RMS" as a piece of its own.
    private static bool StatesWord(string piece) =>
        piece.IndexOf(' ', StringComparison.Ordinal) is > 0 and var blank && Wordy.Contains(PlainLetters.Of(piece[..blank]))
            && TraceWords.ValueAt(piece.Split(' ', StringSplitOptions.RemoveEmptyEntries)) is > 0;

    // "Setup: RBW=9kHz" is about the RBW.
    private static string Inner(string piece)
    {
        int colon = piece.AsSpan().IndexOfAny(':', '=');
        return IsNamed(piece) && SettingKeys.Find(Words(piece[..colon])) is null && piece[(colon + 1)..].Trim() is var rest
            && IsNamed(rest)
            && SettingKeys.Find(Words(rest[..rest.AsSpan().IndexOfAny(':', '=')])) is not null ? rest : piece;
    }

    // "RBW 9 kHz", and not "Detector 1".
    private static bool StatesUnit(string piece) =>
        BeforeNumber(piece) is > 0 and var blank && SettingKeys.Find(Words(piece[..blank])) is not null
        && StatedNumber.Parse(piece[(blank + 1)..]) is { Unit.Length: > 0 };

    private static int BeforeNumber(string piece) =>
        piece.AsSpan().IndexOfAnyInRange('0', '9') is > 0 and var at ? piece.LastIndexOf(' ', at) : -1;

    private static bool IsNamed(string piece) =>
        char.IsLetter(piece.Length > 0 ? piece[0] : ' ') && piece.AsSpan().IndexOfAny(':', '=') > 0;

    private static void Close(string? key, List<string> values, List<Statement> found)
    {
        if (key is null || key.Length == 0)
        {
            return;
        }

        key = WithoutVariable(key);
        if (values.Count > 0 && StatesUnit(key) && LastOfWords(ref key) is [var own])
        {
            values.Insert(0, own);
        }

        ImmutableArray<string> stated =
            [.. values.SkipWhile(v => v.Length == 0).Reverse().SkipWhile(v => v.Length == 0).Reverse()];
        if (stated.IsEmpty)
        {
            stated = LastOfWords(ref key);
        }

        if (stated.IsEmpty)
        {
            return;
        }

        if ((UnitOf(stated[0]) ?? Keyed(key, stated)) is { } statement)
        {
            found.Add(statement);
        }
    }

    // "(Unit:dBm)" behind whatever it is the unit of.
    private static Statement? UnitOf(string value)
    {
        string first = value.Trim('(', ')', '[', ']');
        return first.StartsWith("unit", StringComparison.OrdinalIgnoreCase)
            && first.AsSpan().IndexOfAny(':', '=') is > 0 and var at
            ? new Statement("unit", "", [first[(at + 1)..].Trim()]) : null;
    }

    private static Statement? Keyed(string key, ImmutableArray<string> stated)
    {
        int bracket = key.AsSpan().IndexOfAny('(', '[');
        string written = (bracket > 0 ? key[..bracket] : key).Trim();
        string words = Words(written), unit = bracket > 0 ? key[bracket..].Trim('(', ')', '[', ']', ' ') : "";
        if (words.Length == 0)
        {
            return null;
        }

        // "Bandbreite (RBW)" and "Videobandbreite (VBW)": a name, not a unit.
        if (SettingKeys.IsPlain(Words(unit)))
        {
            (words, unit) = (Words(unit), "");
        }
        else if (unit.Length > 0 && Words($"{written} {unit}") is var whole && SettingKeys.IsNamed(whole))
        {
            // "Bandbreite (ZF)"
            (words, unit) = (whole, "");
        }

        return new Statement(words, unit, stated) { Written = written, Number = NumberIn(written) };
    }

    // "Ref Level -20 dBm", "DATA UNIT dBm": words, and from the first number or unit on what they state.
    private static ImmutableArray<string> LastOfWords(ref string key)
    {
        string[] words = key.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        int at = Array.FindIndex(words, w => IsNumber(w));
        if (at < 0 && words.Length > 1
            && (LevelUnits.Parse(words[^1]) is not null || FrequencyUnits.Parse(words[^1]) is not null))
        {
            at = words.Length - 1;
        }

        at = TraceWords.ValueAt(words) ?? at;
        if (at <= 0)
        {
            return [];
        }

        // "Att AUTO 10 dB"
        at -= at > 1 && SettingFlags.IsFlag(words[at - 1]) ? 1 : 0;
        key = string.Join(' ', words[..at]);
        return [string.Join(' ', words[at..])];
    }

    // "VAR DATE=..." of comments.
    private static string WithoutVariable(string key) =>
        key.StartsWith("VAR ", StringComparison.Ordinal) ? key[4..].TrimStart() : key;

    private static int? NumberIn(string key)
    {
        int first = key.AsSpan().IndexOfAnyInRange('0', '9');
        int last = key.AsSpan().LastIndexOfAnyInRange('0', '9');
        return first >= 0
            && int.TryParse(key.AsSpan(first, last - first + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? number : null;
    }

    private static string Words(string key)
    {
        var words = new StringBuilder(key.Length);
        foreach (char c in key)
        {
            if (char.IsLetter(c))
            {
                words.Append(char.ToLowerInvariant(c));
            }
            else if (words.Length > 0 && words[^1] != ' ')
            {
                words.Append(' ');
            }
        }

        return words.ToString().TrimEnd();
    }

    private static bool IsKey(string field) => field.Length > 1 && char.IsLetter(field[0])
        && (field.Contains(' ', StringComparison.Ordinal) || SettingKeys.Find(Words(field)) is not null);

    private static bool IsNumber(string field)
    {
        ReadOnlySpan<char> digits = field.AsSpan().TrimStart("+-").TrimStart('.');
        return digits.Length > 0 && char.IsAsciiDigit(digits[0]);
    }
}
