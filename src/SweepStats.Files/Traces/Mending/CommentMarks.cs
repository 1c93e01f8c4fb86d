using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Comments that begin with "//", "--", an apostrophe or "REM": they become comments of the usual kind. Behind dashes or an
/// apostrophe a row of numbers is none.
/// </summary>
internal static class CommentMarks
{
    private static readonly Separator[] Separators =
        [new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
            new((byte)',', (byte)'.'), new((byte)' ', (byte)'.'), new((byte)' ', (byte)',')];

    /// <summary>The text with such lines as usual comments; null where it has none.</summary>
    public static MendedText? Mend(TraceText text)
    {
        if (Marked(text) is not [var first, ..] marked)
        {
            return null;
        }

        var buffer = new LineBuffer(text, text.LineCount * 16);
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i);
            if (MarkIn(line) is > 0 and var length)
            {
                buffer.Write("# "u8);
                line = line.TrimStart(" \t"u8)[length..];
            }

            buffer.Line(line);
        }

        string mark = Encoding.UTF8.GetString(text.Line(first).TrimStart(" \t"u8)[..MarkIn(text.Line(first))]).Trim();
        string begins = FormattableString.Invariant($"line {first + 1}");
        return new MendedText(buffer.Finish(true),
            marked.Count == 1 ? $"{begins} begins with '{mark}' and was taken for a comment"
                : FormattableString.Invariant(
                    $"{marked.Count} lines, the first of them {begins}, which begins with '{mark}', were taken for comments"));
    }

    // None where one of them between rows tells of a change.
    private static List<int> Marked(TraceText text)
    {
        List<int> marked = [];
        bool rows = false;
        for (int i = 0; i < text.LineCount; i++)
        {
            bool isMarked = MarkIn(text.Line(i)) > 0;
            rows |= !isMarked && IsRow(text.Line(i));
            if (isMarked && rows && RemarkLine.TellsOfAChange(text.Line(i)) && i + 1 < text.LineCount && IsRow(text.Line(i + 1)))
            {
                return [];
            }

            if (isMarked)
            {
                marked.Add(i);
            }
        }

        return marked;
    }

    // Length of the mark; 0 for none. Most lines are rows, whose first byte tells that they are none.
    private static int MarkIn(ReadOnlySpan<byte> line)
    {
        ReadOnlySpan<byte> bare = line.TrimStart(" \t"u8);
        return bare switch
        {
            [(byte)'/', (byte)'/', ..] => 2,
            [(byte)'-', (byte)'-', .. var rest] => IsRow(bare[1..]) || IsMissing(rest) ? 0 : 2,
            [(byte)'\'', .. var rest] => IsQuote(rest) || IsRow(rest) ? 0 : 1,
            [(byte)'r' or (byte)'R', (byte)'e' or (byte)'E', (byte)'m' or (byte)'M'] => 3,
            [(byte)'r' or (byte)'R', (byte)'e' or (byte)'E', (byte)'m' or (byte)'M',
                (byte)' ' or (byte)'\t' or (byte)':', ..] => 4,
            _ => 0,
        };
    }

    // "--,-60.5" is a row whose first number is missing, and "--;--" one of which both are.
    private static bool IsMissing(ReadOnlySpan<byte> rest) =>
        rest.TrimStart(" \t,;-"u8) is var numbers && (numbers.IsEmpty ? rest.IndexOfAny(",;\t"u8) >= 0 : IsRow(numbers));

    // 'Frequency';'Level' are fields between quotes.
    private static bool IsQuote(ReadOnlySpan<byte> rest) =>
        rest.IndexOf((byte)'\'') is >= 0 and var end
            && (rest[(end + 1)..].TrimStart((byte)' ') is [] or [(byte)',' or (byte)';' or (byte)'\t', ..]);

    private static bool IsRow(ReadOnlySpan<byte> rest)
    {
        if (rest.TrimStart((byte)' ') is not [(byte)'-' or (byte)'+' or (byte)'.' or (>= (byte)'0' and <= (byte)'9'), ..])
        {
            return false;
        }

        using var numbers = new PooledList<double>(16);
        foreach (Separator separator in Separators)
        {
            if (new NumericRow(separator, 1).Read(rest, numbers) > 0)
            {
                return true;
            }
        }

        return false;
    }
}
