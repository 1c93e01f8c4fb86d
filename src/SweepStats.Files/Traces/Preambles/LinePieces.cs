namespace SweepStats.Files.Traces.Preambles;

/// <summary>Cuts a line above the data into fields, and these at every two blanks.</summary>
internal static class LinePieces
{
    /// <summary>The pieces, without quotes and blanks round them.</summary>
    public static List<string> Of(string line)
    {
        ReadOnlySpan<char> bare = WithoutLeaders(line).AsSpan().Trim().TrimStart("!#%*").Trim();
        char mark = bare.Contains(';') ? ';' : bare.Contains('\t') ? '\t' : ',';
        List<string> pieces = [];
        int from = 0;
        while (from <= bare.Length)
        {
            int length = bare[from..].IndexOf(mark);
            while (mark == ',' && length >= 0 && IsDecimal(bare, from, from + length))
            {
                int next = bare[(from + length + 1)..].IndexOf(mark);
                length = next < 0 ? -1 : length + 1 + next;
            }

            length = length < 0 ? bare.Length - from : length;
            Cut(bare.Slice(from, length), pieces);
            from += length + 1;
        }

        return pieces;
    }

    // "RBW .......... 10 kHz": dots that lead from a key to its value.
    private static string WithoutLeaders(string line)
    {
        int first = line.IndexOf("...", StringComparison.Ordinal);
        int end = first < 0 ? -1 : first + line.AsSpan(first).IndexOfAnyExcept('.');
        return first <= 0 || end <= first || line[end] != ' ' || line.AsSpan(0, first).IndexOfAny(':', '=') >= 0 ? line
            : $"{line[..first].TrimEnd()}: {line[end..].TrimStart()}";
    }

    // The comma of "RBW: 0,1 MHz" and "RBW 0,1 MHz", which stands between two digits of a field that begins with its key. A comma
    // between fields that are numbers alone parts them.
    private static bool IsDecimal(ReadOnlySpan<char> line, int from, int comma)
    {
        ReadOnlySpan<char> before = line[from..comma].TrimStart();
        return comma + 1 < line.Length && char.IsAsciiDigit(line[comma + 1]) && before.Length > 2 && char.IsAsciiDigit(before[^1])
            && char.IsLetter(before[0]) && (before.IndexOf(',') is >= 0 and var first
                ? IsGroup(before[(before.LastIndexOf(',') + 1)..]) && IsGroup(line[(comma + 1)..])
                    && EndsInOneNumber(before[..first])
                : EndsInOneNumber(before));
    }

    // Three digits and no more, as in "1,000,000".
    private static bool IsGroup(ReadOnlySpan<char> text) =>
        (text.IndexOfAnyExceptInRange('0', '9') is >= 0 and var end ? end : text.Length) == 3;

    // "RBW: 0" and "RBW 0" do; "25/03/2026", "T 1.5" and "Trace 1", which is a name, do not.
    private static bool EndsInOneNumber(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<char> key = text[..(text.LastIndexOfAnyExceptInRange('0', '9') + 1)];
        ReadOnlySpan<char> bare = key.TrimEnd("-+").TrimEnd();
        return bare.Length > 0
            && (bare[^1] is ':' or '=' || (key[^1] is ' ' or '-' or '+' && SettingKeys.IsPlain(bare.ToString())));
    }

    private static void Cut(ReadOnlySpan<char> field, List<string> pieces)
    {
        ReadOnlySpan<char> rest = field.Trim().Trim('"').Trim();
        while (rest.IndexOf("  ") is >= 0 and var gap)
        {
            Part(rest[..gap].ToString(), pieces);
            rest = rest[gap..].TrimStart();
        }

        Part(rest.ToString(), pieces);
    }

    // "RBW=9kHz VBW=30kHz" and "RBW: 9 kHz Sweep Time: 20 ms": a key with its mark begins a piece. Most fields have one mark or
    // none.
    private static void Part(string field, List<string> pieces)
    {
        int first = field.AsSpan().IndexOfAny(':', '=');
        if (first < 0 || field.AsSpan(first + 1).IndexOfAny(':', '=') < 0)
        {
            pieces.Add(field);
            return;
        }

        string[] words = field.Split([' ', '|'], StringSplitOptions.RemoveEmptyEntries);
        int from = 0;
        int valueAt = ValueAt(words, 0);
        for (int i = valueAt; i < words.Length; i++)
        {
            int start = i > valueAt && IsKey(words[i], words[i - 1] + " ") ? i - 1 : IsKey(words[i], "") ? i : -1;
            if (start >= valueAt)
            {
                pieces.Add(string.Join(' ', words[from..start]));
                (from, valueAt) = (start, ValueAt(words, i));
                i = Math.Max(i, valueAt - 1);
            }
        }

        pieces.Add(string.Join(' ', words[from..]));
    }

    // The place behind the first word of a value: behind "RBW=9kHz", and behind the word that follows "RBW:".
    private static int ValueAt(string[] words, int from)
    {
        int at = Array.FindIndex(words, from, w => w.AsSpan().IndexOfAny(':', '=') >= 0);
        return at < 0 ? words.Length : words[at][^1] is ':' or '=' ? at + 2 : at + 1;
    }

    private static bool IsKey(string word, string before) =>
        word.AsSpan().IndexOfAny(':', '=') is > 0 and var mark && char.IsLetter(word[0])
            && SettingKeys.Find((before + word[..mark]).ToLowerInvariant()) is not null;
}
