namespace SweepStats.Files.Traces.Preambles;

/// <summary>Cuts a line above the data into fields, and these at every two blanks.</summary>
internal static class LinePieces
{
    /// <summary>The pieces, without quotes and blanks round them.</summary>
    public static List<string> Of(string line)
    {
        ReadOnlySpan<char> bare = line.AsSpan().Trim().TrimStart("!#%*").Trim();
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

    // The comma of "RBW: 0,1 MHz" and "RBW 0,1 MHz", which stands between two digits of a field that begins with its key. A comma between fields
    // that are numbers alone parts them.
    private static bool IsDecimal(ReadOnlySpan<char> line, int from, int comma)
    {
        ReadOnlySpan<char> before = line[from..comma].TrimStart();
        return comma + 1 < line.Length && char.IsAsciiDigit(line[comma + 1]) && before.Length > 2 && char.IsAsciiDigit(before[^1])
            && char.IsLetter(before[0]) && !before.Contains(',') && EndsInOneNumber(before);
    }

    // "RBW: 0" and "RBW 0" do; "25/03/2026", "T 1.5" and "Trace 1", which is a name, do not.
    private static bool EndsInOneNumber(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<char> key = text[..(text.LastIndexOfAnyExceptInRange('0', '9') + 1)];
        ReadOnlySpan<char> bare = key.TrimEnd("-+").TrimEnd();
        return bare.Length > 0 && (bare[^1] is ':' or '=' || (key[^1] is ' ' or '-' or '+' && SettingKeys.IsPlain(bare.ToString())));
    }

    private static void Cut(ReadOnlySpan<char> field, List<string> pieces)
    {
        ReadOnlySpan<char> rest = field.Trim().Trim('"').Trim();
        while (rest.IndexOf("  ") is >= 0 and var gap)
        {
            pieces.Add(rest[..gap].ToString());
            rest = rest[gap..].TrimStart();
        }

        pieces.Add(rest.ToString());
    }
}
