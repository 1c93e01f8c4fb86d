using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Cuts a line above the data into statements: <c>RBW,9000,Hz</c>, <c>! RBW: 9 kHz  VBW: 30 kHz</c>, <c>Start Freq,1e5,Stop Freq,3e7</c>,
/// <c>VBW (kHz) = 10</c>, <c>Detector;Peak;Normal</c>, <c>Ref Level -20 dBm</c>, <c>Detector RMS</c>.
/// </summary>
/// <remarks>Takes time in proportion to the line, whatever stands in it.</remarks>
internal static class StatementReader
{
    /// <summary>Words behind a number of points.</summary>
    public static readonly HashSet<string> PointWords = ["points", "pts", "punkte", "messpunkte", "puntos", "punti"];

    /// <summary>The statements of a line; none where it states nothing.</summary>
    public static List<Statement> Read(string line)
    {
        List<Statement> found = [];
        string? key = null;
        List<string> values = [];
        List<string> pieces = Pieces(line);
        for (int i = 0; i < pieces.Count; i++)
        {
            string piece = pieces[i];
            int colon = piece.AsSpan().IndexOfAny(':', '=');
            bool named = colon > 0 && char.IsLetter(piece[0]);
            bool next = values.Count > 0 && IsNumber(values[0]) && IsKey(piece) && i + 1 < pieces.Count && IsNumber(pieces[i + 1]);
            if (values.Count > 0 && PointsIn(piece) is { } points)
            {
                found.Add(new Statement("points", "", [points]));
                continue;
            }

            if (key is not null && !named && !next)
            {
                values.Add(piece);
                continue;
            }

            Close(key, values, found);
            key = named ? piece[..colon].TrimEnd() : piece;
            values = named && piece[(colon + 1)..].Trim() is { Length: > 0 } value ? [value] : [];
        }

        Close(key, values, found);
        return found;
    }

    // "CF=100 MHz, SPAN=10 MHz, 401 points": the unit tells what it counts.
    private static string? PointsIn(string piece) =>
        piece.Length > 0 && char.IsAsciiDigit(piece[0]) && StatedNumber.Parse(piece) is { Unit.Length: > 0 } count && PointWords.Contains(count.Unit.ToLowerInvariant()) ? count.Digits : null;

    // Fields, and within them what two blanks part.
    private static List<string> Pieces(string line)
    {
        ReadOnlySpan<char> bare = line.AsSpan().Trim().TrimStart("!#%").Trim();
        char mark = bare.Contains(';') ? ';' : bare.Contains('\t') ? '\t' : ',';
        if (mark == ',' && HasDecimalComma(bare))
        {
            mark = ';';
        }

        List<string> pieces = [];
        foreach (Range field in bare.Split(mark))
        {
            ReadOnlySpan<char> rest = bare[field].Trim().Trim('"').Trim();
            while (rest.IndexOf("  ") is >= 0 and var gap)
            {
                pieces.Add(rest[..gap].ToString());
                rest = rest[gap..].TrimStart();
            }

            pieces.Add(rest.ToString());
        }

        return pieces;
    }

    // "Center : 2,44 GHz": behind a colon, the only comma of the line, and too few or too many digits for thousands.
    private static bool HasDecimalComma(ReadOnlySpan<char> line)
    {
        int comma = line.IndexOf(',');
        int colon = line.IndexOfAny(':', '=');
        if (colon < 0 || comma < colon + 2 || line.LastIndexOf(',') != comma || !char.IsAsciiDigit(line[comma - 1]))
        {
            return false;
        }

        int digits = line[(comma + 1)..].IndexOfAnyExceptInRange('0', '9');
        return digits is 1 or 2 || digits > 3;
    }

    private static void Close(string? key, List<string> values, List<Statement> found)
    {
        if (key is null || key.Length == 0)
        {
            return;
        }

        ImmutableArray<string> stated = [.. values.SkipWhile(v => v.Length == 0).Reverse().SkipWhile(v => v.Length == 0).Reverse()];
        if (stated.IsEmpty)
        {
            stated = LastOfWords(ref key);
        }

        if (stated.IsEmpty)
        {
            return;
        }

        // "(Unit:dBm)" behind whatever it is the unit of.
        string first = stated[0].Trim('(', ')', '[', ']');
        if (first.StartsWith("unit", StringComparison.OrdinalIgnoreCase) && first.AsSpan().IndexOfAny(':', '=') is > 0 and var at)
        {
            found.Add(new Statement("unit", "", [first[(at + 1)..].Trim()]));
            return;
        }

        int bracket = key.AsSpan().IndexOfAny('(', '[');
        string written = (bracket > 0 ? key[..bracket] : key).Trim();
        string words = Words(written);
        if (words.Length > 0)
        {
            string unit = bracket > 0 ? key[bracket..].Trim('(', ')', '[', ']', ' ') : "";
            found.Add(new Statement(words, unit, stated) { Written = written, Number = NumberIn(written) });
        }
    }

    // "Ref Level -20 dBm", "DATA UNIT dBm": words, and from the first number or unit on what they state.
    private static ImmutableArray<string> LastOfWords(ref string key)
    {
        string[] words = key.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        int at = Array.FindIndex(words, w => IsNumber(w));
        if (at < 0 && words.Length > 1 && (LevelUnits.Parse(words[^1]) is not null || FrequencyUnits.Parse(words[^1]) is not null))
        {
            at = words.Length - 1;
        }

        at = TraceWords.ValueAt(words) ?? at;
        if (at <= 0)
        {
            return [];
        }

        key = string.Join(' ', words[..at]);
        return [string.Join(' ', words[at..])];
    }

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
