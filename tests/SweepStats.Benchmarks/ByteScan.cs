namespace SweepStats.Benchmarks;

/// <summary>
/// A plain scan: each file goes into one buffer, and its digits become numbers. Nothing is checked and nothing
/// else is understood. What it reads are whole numbers and plain decimals of fifteen digits at most.
/// </summary>
internal sealed class ByteScan
{
    private static readonly double[] Powers = [.. Enumerable.Range(0, 16).Select(e => Math.Pow(10, e))];

    private readonly double[] _numbers = new double[1 << 16];
    private byte[] _buffer = new byte[1 << 20];

    /// <summary>The bytes of a file, until the next is read.</summary>
    public ReadOnlySpan<byte> Bytes(string path)
    {
        using var handle = File.OpenHandle(path);
        int length = (int)RandomAccess.GetLength(handle);
        if (length > _buffer.Length)
        {
            _buffer = new byte[length];
        }

        return _buffer.AsSpan(0, RandomAccess.Read(handle, _buffer.AsSpan(0, length), 0));
    }

    /// <summary>The numbers below the first line, row by row.</summary>
    public ReadOnlySpan<double> Numbers(ReadOnlySpan<byte> text)
    {
        int at = text.IndexOf((byte)'\n') + 1, count = 0;
        while (at < text.Length)
        {
            bool negative = text[at] == (byte)'-';
            long digits = 0;
            int point = -1;
            for (at += negative ? 1 : 0; at < text.Length && text[at] is not ((byte)',' or (byte)'\n'); at++)
            {
                if (text[at] == (byte)'.')
                {
                    point = at;
                }
                else
                {
                    digits = unchecked((digits * 10) + text[at] - '0');
                }
            }

            double number = digits / Powers[point < 0 ? 0 : at - point - 1];
            _numbers[count++] = negative ? -number : number;
            at++;
        }

        return _numbers.AsSpan(0, count);
    }
}
