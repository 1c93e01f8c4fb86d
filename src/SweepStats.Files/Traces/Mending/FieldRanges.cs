namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Where the fields of a line stand, quotes and blanks included, so that a line can be written again with some of them changed.
/// </summary>
internal static class FieldRanges
{
    /// <summary>Finds them; fields are parted as <see cref="Text.FieldReader"/> parts them.</summary>
    /// <param name="line">The line.</param>
    /// <param name="mark">Comma, semicolon, tab, or blank for runs of blanks and tabs.</param>
    /// <param name="into">Takes the fields; emptied first.</param>
    public static void Of(ReadOnlySpan<byte> line, byte mark, List<Range> into)
    {
        into.Clear();
        int at = Skip(line, 0, mark);
        while (at < line.Length
            || (mark != (byte)' ' && into.Count > 0 && at == line.Length && line.Length > 0 && line[^1] == mark))
        {
            int end = End(line, at, mark);
            into.Add(at..end);
            if (end >= line.Length)
            {
                return;
            }

            at = Skip(line, end + 1, mark);
        }
    }

    /// <summary>A field without its blanks and enclosing quotes.</summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> field)
    {
        ReadOnlySpan<byte> bare = field.Trim(" \t"u8);
        return bare.Length >= 2 && bare[0] == (byte)'"' && bare[^1] == (byte)'"' ? bare[1..^1].Trim(" \t"u8) : bare;
    }

    private static int End(ReadOnlySpan<byte> line, int at, byte mark)
    {
        int start = at;
        while (start < line.Length && line[start] == (byte)' ')
        {
            start++;
        }

        bool quoted = start < line.Length && line[start] == (byte)'"';
        bool inside = quoted;
        int end = quoted ? start + 1 : at;
        while (end < line.Length && (inside || !IsMark(line[end], mark)))
        {
            inside ^= quoted && line[end] == (byte)'"';
            end++;
        }

        return end;
    }

    private static int Skip(ReadOnlySpan<byte> line, int at, byte mark)
    {
        while (mark == (byte)' ' && at < line.Length && IsMark(line[at], mark))
        {
            at++;
        }

        return at;
    }

    private static bool IsMark(byte c, byte mark) => c == mark || (mark == (byte)' ' && c == (byte)'\t');
}
