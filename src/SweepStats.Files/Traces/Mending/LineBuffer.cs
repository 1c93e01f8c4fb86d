using System.Buffers;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>Writes the lines of a mended text into pooled memory.</summary>
/// <param name="source">The text that is mended; the new one goes by its name.</param>
/// <param name="capacity">Bytes that it will about take.</param>
internal sealed class LineBuffer(TraceText source, int capacity)
{
    private byte[] _bytes = ArrayPool<byte>.Shared.Rent(Math.Max(capacity, 256));
    private int _count;

    /// <summary>Writes a part of a line.</summary>
    public void Write(ReadOnlySpan<byte> part)
    {
        if (_count + part.Length > _bytes.Length)
        {
            byte[] larger = ArrayPool<byte>.Shared.Rent(checked((_count + part.Length) * 2));
            _bytes.AsSpan(0, _count).CopyTo(larger);
            ArrayPool<byte>.Shared.Return(_bytes);
            _bytes = larger;
        }

        part.CopyTo(_bytes.AsSpan(_count));
        _count += part.Length;
    }

    /// <summary>Ends a line.</summary>
    public void EndLine() => Write("\n"u8);

    /// <summary>Writes a whole line.</summary>
    public void Line(ReadOnlySpan<byte> line)
    {
        Write(line);
        EndLine();
    }

    /// <summary>
    /// The text; it owns the memory from here on. Where the last line of the source has no end, neither has that of the text.
    /// </summary>
    public TraceText Finish(bool wholeText)
    {
        if (wholeText && !source.EndsWithLine && _count > 0)
        {
            _count--;
        }

        return new TraceText(source.File, new FileBytes(_bytes, 0, _count, source.Sha256, source.Assumption));
    }
}
