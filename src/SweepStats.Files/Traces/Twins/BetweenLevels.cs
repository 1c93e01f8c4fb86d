using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Twins;

/// <summary>
/// A text of rows without its levels: what stands before the first, between two of them, and behind the last. A text that has the
/// same there has the same lines, the same head and the same frequencies. Immutable.
/// </summary>
internal sealed class BetweenLevels
{
    private readonly byte[] _pieces;
    private readonly int[] _ends;

    private BetweenLevels(byte[] pieces, int[] ends) => (_pieces, _ends) = (pieces, ends);

    /// <summary>Number of levels in the text.</summary>
    public int Levels => _ends.Length;

    /// <summary>Takes the levels out of a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="head">Characters before its rows.</param>
    /// <param name="mark">What stands between frequency and level.</param>
    /// <returns>What is left; null where a row is no frequency of digits and a plain level.</returns>
    public static BetweenLevels? Of(ReadOnlySpan<byte> text, int head, byte mark)
    {
        using var pieces = new PooledList<byte>(text.Length);
        using var ends = new PooledList<int>(text.Length / 16);
        (int from, int at) = (0, head);
        while (at < text.Length)
        {
            int frequency = FrequencyAt(text[at..], mark);
            int level = frequency == 0 ? 0 : PlainLevel.Read(text[(at + frequency)..], out _);
            int end = level == 0 ? 0 : LineEndAt(text[(at + frequency + level)..]);
            if (level == 0 || (end == 0 && at + frequency + level < text.Length))
            {
                return null;
            }

            pieces.AddRange(text[from..(at + frequency)]);
            ends.Add(pieces.Count);
            from = at + frequency + level;
            at = from + end;
        }

        pieces.AddRange(text[from..]);
        return new BetweenLevels(pieces.Items.ToArray(), ends.Items.ToArray());
    }

    /// <summary>Whether a line is a frequency of digits, a mark and a plain level.</summary>
    public static bool IsRow(ReadOnlySpan<byte> line, byte mark) =>
        FrequencyAt(line, mark) is > 0 and var frequency && PlainLevel.Read(line[frequency..], out _) is > 0 and var level
            && frequency + level == line.Length;

    /// <summary>Whether a text begins with what stands before the first level.</summary>
    public bool IsHeadOf(ReadOnlySpan<byte> text) => text.StartsWith(_pieces.AsSpan(0, _ends[0]));

    /// <summary>The levels of a text that is otherwise the same, character by character.</summary>
    /// <param name="text">The text.</param>
    /// <param name="levels">Where they go, <see cref="Levels"/> of them.</param>
    /// <returns>Whether the text is such.</returns>
    public bool TryRead(ReadOnlySpan<byte> text, Span<double> levels)
    {
        ReadOnlySpan<byte> pieces = _pieces;
        int from = 0;
        for (int i = 0; i < levels.Length; i++)
        {
            int length = _ends[i] - from;
            if (!text.StartsWith(pieces.Slice(from, length)))
            {
                return false;
            }

            int level = PlainLevel.Read(text[length..], out levels[i]);
            if (level == 0)
            {
                return false;
            }

            text = text[(length + level)..];
            from = _ends[i];
        }

        return text.SequenceEqual(pieces[from..]);
    }

    /// <summary>
    /// Whether the last number of a text that was read may be cut off: its line does not end, and it has fewer decimals than the
    /// first.
    /// </summary>
    public bool MayBeCut(ReadOnlySpan<byte> text)
    {
        if (_pieces.Length > _ends[^1])
        {
            return false;
        }

        ReadOnlySpan<byte> first = text[_ends[0]..];
        ReadOnlySpan<byte> last = text[(text.LastIndexOf(_pieces[^1]) + 1)..];
        return Decimals(last) < Decimals(first[..first.IndexOfAny("\r\n"u8)]);
    }

    private static int Decimals(ReadOnlySpan<byte> level) =>
        level.IndexOf((byte)'.') is >= 0 and var point ? level.Length - point - 1 : 0;

    // Digits, perhaps with decimals, and the mark behind them; 0 for anything else.
    private static int FrequencyAt(ReadOnlySpan<byte> text, byte mark)
    {
        int at = WholeAt(text);
        if (at > 0 && at < text.Length && text[at] == (byte)'.')
        {
            int decimals = WholeAt(text[(at + 1)..]);
            at = decimals == 0 ? 0 : at + 1 + decimals;
        }

        return at > 0 && at < text.Length && text[at] == mark ? at + 1 : 0;
    }

    private static int WholeAt(ReadOnlySpan<byte> text)
    {
        int other = text.IndexOfAnyExceptInRange((byte)'0', (byte)'9');
        return other < 0 ? text.Length : other;
    }

    private static int LineEndAt(ReadOnlySpan<byte> text) => text switch
    {
        [(byte)'\r', (byte)'\n', ..] => 2,
        [(byte)'\r' or (byte)'\n', ..] => 1,
        _ => 0,
    };
}
