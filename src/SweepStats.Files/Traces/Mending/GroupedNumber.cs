namespace SweepStats.Files.Traces.Mending;

/// <summary>A number whose digits stand in groups of three, such as <c>1.000.000,5</c> or <c>30 000 000</c>.</summary>
/// <param name="Mark">What parts the groups: its first byte stands for a blank of another width.</param>
/// <param name="DecimalMark">What parts the decimals; 0 where there are none.</param>
/// <param name="IsCertain">Whether it can be nothing else: one group behind a point or a comma may be decimals.</param>
internal readonly record struct GroupedNumber(byte Mark, byte DecimalMark, bool IsCertain)
{
    private const byte Narrow = 0xE2;
    private const byte NoBreak = 0xC2;

    /// <summary>Reads a field; null where it is no such number.</summary>
    public static GroupedNumber? Of(ReadOnlySpan<byte> field)
    {
        int at = field.Length > 0 && field[0] is (byte)'-' or (byte)'+' ? 1 : 0;
        int lead = Digits(field[at..]);
        if (lead is < 1 or > 3 || field[at] == (byte)'0' || at + lead == field.Length || MarkAt(field[(at + lead)..]) is 0)
        {
            return null;
        }

        at += lead;
        ReadOnlySpan<byte> mark = field.Slice(at, MarkAt(field[at..]));
        int groups = Groups(field[at..], mark);
        at += groups * (mark.Length + 3);
        byte decimalMark = DecimalMarkBefore(field[at..], mark[0]);
        return groups == 0 || (decimalMark == 0 && at < field.Length) ? null
            : new GroupedNumber(mark[0], decimalMark, groups > 1 || decimalMark != 0 || mark[0] is not ((byte)'.' or (byte)','));
    }

    private static int Groups(ReadOnlySpan<byte> rest, ReadOnlySpan<byte> mark)
    {
        int groups = 0;
        while (rest.StartsWith(mark) && Digits(rest[mark.Length..]) == 3)
        {
            rest = rest[(mark.Length + 3)..];
            groups++;
        }

        return groups;
    }

    // Another mark than that between groups, and nothing but digits behind it; 0 where there is none.
    private static byte DecimalMarkBefore(ReadOnlySpan<byte> rest, byte mark) =>
        rest is [(byte)'.' or (byte)',', ..] && rest[0] != mark && Digits(rest[1..]) is > 0 and var decimals
            && 1 + decimals == rest.Length ? rest[0] : (byte)0;

    /// <summary>The digits and the decimal mark of a field, without what parts the groups.</summary>
    public static int Plain(ReadOnlySpan<byte> field, byte mark, Span<byte> into)
    {
        int kept = 0;
        for (int at = 0; at < field.Length; at++)
        {
            if (field[at] == mark)
            {
                at += MarkAt(field[at..]) - 1;
            }
            else
            {
                into[kept++] = field[at];
            }
        }

        return kept;
    }

    private static int Digits(ReadOnlySpan<byte> text)
    {
        int end = text.IndexOfAnyExceptInRange((byte)'0', (byte)'9');
        return end < 0 ? text.Length : end;
    }

    // Point, comma, apostrophes, blank; then the blanks that typesetters put between thousands.
    private static int MarkAt(ReadOnlySpan<byte> text) =>
        text[0] is (byte)'.' or (byte)',' or (byte)'\'' or (byte)' ' ? 1
        : text[0] == NoBreak && text.StartsWith("\u00A0"u8) ? 2
        : text[0] == Narrow && (text.StartsWith("\u2009"u8) || text.StartsWith("\u202F"u8) || text.StartsWith("\u2019"u8)) ? 3
        : 0;
}
