namespace SweepStats.Studies.Fuzzing;

/// <summary>A file in the making: mutations change its name and its content.</summary>
internal sealed class FuzzDraft(FuzzSeed seed, IReadOnlyList<FuzzSeed> seeds)
{
    /// <summary>Mutations may grow a file to this length; a hundred thousand bytes keep a million files within minutes.</summary>
    public const int Longest = 100_000;

    public string Name { get; set; } = seed.Name;

    public byte[] Content { get; set; } = seed.Content;

    /// <summary>All seeds, for joins.</summary>
    public IReadOnlyList<FuzzSeed> Seeds => seeds;

    /// <summary>Puts bytes in place of a part of the content.</summary>
    public void Replace(int start, int length, ReadOnlySpan<byte> with)
    {
        ReadOnlySpan<byte> old = Content;
        Content = [.. old[..start], .. with, .. old[(start + length)..]];
    }

    /// <summary>Start and length of every line, its end included.</summary>
    public List<(int Start, int Length)> Lines()
    {
        List<(int, int)> lines = [];
        int start = 0;
        while (start < Content.Length)
        {
            int end = Content.AsSpan(start).IndexOfAny((byte)'\n', (byte)'\r');
            int next = end < 0 ? Content.Length : start + end + 1;
            if (end >= 0 && Content[next - 1] == '\r' && next < Content.Length && Content[next] == '\n')
            {
                next++;
            }

            lines.Add((start, next - start));
            start = next;
        }

        return lines;
    }

    /// <summary>Start and length of every run of digits, signs, marks and exponents that holds a digit.</summary>
    public List<(int Start, int Length)> Numbers()
    {
        List<(int, int)> numbers = [];
        int start = -1;
        bool digit = false;
        for (int i = 0; i <= Content.Length; i++)
        {
            bool within = i < Content.Length
                && Content[i] is (>= (byte)'0' and <= (byte)'9') or (byte)'.' or (byte)'+' or (byte)'-' or (byte)'e' or (byte)'E';
            if (within)
            {
                start = start < 0 ? i : start;
                digit |= char.IsAsciiDigit((char)Content[i]);
            }
            else
            {
                if (digit)
                {
                    numbers.Add((start, i - start));
                }

                (start, digit) = (-1, false);
            }
        }

        return numbers;
    }
}
