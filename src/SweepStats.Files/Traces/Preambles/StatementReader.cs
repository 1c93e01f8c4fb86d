using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Cuts a line above the data into statements: <c>RBW,9000,Hz</c>, <c>! RBW: 9 kHz  VBW: 30 kHz</c>, <c>Start Freq,1e5,Stop Freq,3e7</c>,
/// <c>VBW (kHz) = 10</c>, <c>Detector;Peak;Normal</c>.
/// </summary>
internal static partial class StatementReader
{
    private static readonly char[] Marks = [',', ';', '\t'];

    /// <summary>The statements of a line; none where it states nothing.</summary>
    public static IEnumerable<Statement> Read(string line, int index)
    {
        string bare = line.Replace("\"", "", StringComparison.Ordinal).Trim().TrimStart('!', '#', '%').Trim();
        if (bare.Length == 0)
        {
            return [];
        }

        return bare.IndexOfAny(Marks) >= 0 && !ColonBeforeMarks().IsMatch(bare) ? Fields(bare, index) : Free(bare, index);
    }

    // Fields: a key, its values, and after values that are numbers perhaps the next key.
    private static List<Statement> Fields(string bare, int index)
    {
        char mark = bare.Contains(';', StringComparison.Ordinal) ? ';' : bare.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        string[] fields = [.. bare.Split(mark).Select(f => f.Trim())];
        List<Statement> found = [];
        string? key = null;
        List<string> values = [];
        for (int i = 0; i < fields.Length; i++)
        {
            bool startsAnew = key is null || (values.Count > 0 && IsNumber(values[0]) && IsKey(fields[i]) && i + 1 < fields.Length && IsNumber(fields[i + 1]));
            if (startsAnew)
            {
                Close(key, values, index, found);
                (key, values) = (fields[i], []);
            }
            else
            {
                values.Add(fields[i]);
            }
        }

        Close(key, values, index, found);
        return found;
    }

    private static void Close(string? key, List<string> values, int index, List<Statement> found)
    {
        while (values.Count > 0 && values[^1].Length == 0)
        {
            values.RemoveAt(values.Count - 1);
        }

        if (key is null)
        {
            return;
        }

        if (values.Count > 0)
        {
            Add(key.TrimEnd(':', '='), [.. values.SkipWhile(v => v.Length == 0)], index, found);
        }
        else
        {
            found.AddRange(Free(key, index));
        }
    }

    private static List<Statement> Free(string bare, int index)
    {
        List<Statement> found = [];
        foreach (Match pair in Pairs().Matches(bare))
        {
            Add(pair.Groups["key"].Value, [.. TwoBlanks().Split(pair.Groups["value"].Value)[0].Split(Marks, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)], index, found);
        }

        if (found.Count == 0 && KeyAndNumber().Match(bare) is { Success: true } plain)
        {
            Add(plain.Groups["key"].Value, [plain.Groups["value"].Value], index, found);
        }

        if (UnitWithin().Match(bare) is { Success: true } unit)
        {
            Add("unit", [unit.Groups[1].Value], index, found);
        }

        return found;
    }

    private static void Add(string key, ImmutableArray<string> values, int index, List<Statement> found)
    {
        Match bracket = Bracketed().Match(key);
        string words = NotWord().Replace((bracket.Success ? key[..bracket.Index] : key).ToLowerInvariant(), " ").Trim();
        if (words.Length > 0 && values.Length > 0)
        {
            found.Add(new Statement(words, bracket.Success ? bracket.Groups[1].Value.Trim() : "", values, index));
        }
    }

    private static bool IsKey(string field) => field.Length > 1 && char.IsLetter(field[0]) && field.Contains(' ', StringComparison.Ordinal);

    private static bool IsNumber(string field) => NumberFirst().IsMatch(field);

    [GeneratedRegex(@"^[^,;\t]*[\p{L}\)\]]\s*[:=]\s*[^,;\t\s]", RegexOptions.CultureInvariant, 100)]
    private static partial Regex ColonBeforeMarks();

    // "KEY: value", several with two blanks between them.
    [GeneratedRegex(@"(?<key>\p{L}[\p{L}\d _.\-/]*(?:[\(\[][^\)\]]*[\)\]])?)\s*[:=]\s*(?<value>\S.*?)(?=\s{2,}\p{L}[\p{L} _.\-/]*\s*[:=]|$)", RegexOptions.CultureInvariant, 100)]
    private static partial Regex Pairs();

    [GeneratedRegex(@"^(?<key>\p{L}[\p{L} _.\-/]*?(?:\s*[\(\[][^\)\]]*[\)\]])?)\s+(?<value>[-+]?\.?\d.*|dB\S*|[kMG]?Hz)$", RegexOptions.CultureInvariant, 100)]
    private static partial Regex KeyAndNumber();

    [GeneratedRegex(@"\bunit\s*[:=]\s*([^\s,;\)\]]+)[\)\]]", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase, 100)]
    private static partial Regex UnitWithin();

    [GeneratedRegex(@"\s*[\(\[]([^\)\]]*)[\)\]]\s*$", RegexOptions.CultureInvariant, 100)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\s{2,}")]
    private static partial Regex TwoBlanks();

    [GeneratedRegex(@"[^\p{L}]+")]
    private static partial Regex NotWord();

    [GeneratedRegex(@"^[-+]?\.?\d")]
    private static partial Regex NumberFirst();
}
