using System.Buffers;
using System.Text;

namespace SweepStats.Files.Traces.Text;

/// <summary>The text of a trace file as UTF-8 bytes, cut into lines. Owns a pooled buffer: use within one reading only.</summary>
internal sealed class TraceText : IDisposable
{
    /// <summary>Most lines that are read. Receivers sweep up to some hundred thousand points.</summary>
    public const int MostLines = 4_000_000;

    private readonly byte[] _buffer;
    private readonly int _start;
    private readonly int _end;
    private readonly PooledList<(int Start, int End)> _lines;

    /// <summary>Cuts the bytes of a file into lines and takes their buffer over.</summary>
    public TraceText(string file, FileBytes bytes)
    {
        File = file;
        (_buffer, _start, _end) = (bytes.Buffer, bytes.Start, bytes.End);
        Assumption = bytes.Assumption;
        Sha256 = bytes.Sha256;
        EndsWithLine = _end > _start && _buffer[_end - 1] is (byte)'\n' or (byte)'\r';
        _lines = Cut(_buffer.AsSpan(0, _end), _start);
    }

    /// <summary>Whether the last line has its line end.</summary>
    public bool EndsWithLine { get; }

    /// <summary>Path as people see it.</summary>
    public string File { get; }

    /// <summary>What was taken for granted in decoding; null for plain UTF-8 and for marked UTF-16.</summary>
    public string? Assumption { get; }

    /// <summary>Digest of the file as it lies on the disk.</summary>
    public string Sha256 { get; }

    /// <summary>Lines of the file, up to one more than <see cref="MostLines"/>.</summary>
    public int LineCount => _lines.Count;

    /// <summary>Whether the file has more lines than a sweep can have points; the lines beyond were not looked at.</summary>
    public bool HasTooManyLines => _lines.Count > MostLines;

    /// <summary>Index of the first line that is longer than a line may be; null where none is.</summary>
    public int? OverlongLine(int limit)
    {
        for (int i = 0; i < _lines.Count; i++)
        {
            if (_lines[i].End - _lines[i].Start > limit)
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>All lines with their ends.</summary>
    public ReadOnlySpan<byte> Bytes => _buffer.AsSpan(_start, _end - _start);

    /// <summary>Where in <see cref="Bytes"/> a line begins.</summary>
    public int StartOf(int index) => _lines[index].Start - _start;

    /// <summary>A line without its end, by index from 0.</summary>
    public ReadOnlySpan<byte> Line(int index) => _buffer.AsSpan(_lines[index].Start, _lines[index].End - _lines[index].Start);

    /// <summary>A line as text.</summary>
    public string LineText(int index) => Encoding.UTF8.GetString(Line(index));

    /// <summary>Gives the buffer back; no line may be looked at afterwards.</summary>
    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(_buffer);
        _lines.Dispose();
    }

    // Line feed, carriage return and both together end a line, mixed within one file as instruments do.
    private static PooledList<(int Start, int End)> Cut(ReadOnlySpan<byte> text, int start)
    {
        PooledList<(int, int)> lines = new(Math.Min((text.Length / 16) + 4, MostLines));
        int at = start;
        while (at < text.Length && lines.Count <= MostLines)
        {
            int length = text[at..].IndexOfAny((byte)'\n', (byte)'\r');
            if (length < 0)
            {
                lines.Add((at, text.Length));
                break;
            }

            lines.Add((at, at + length));
            at += length;
            at += text[at] == (byte)'\r' && at + 1 < text.Length && text[at + 1] == (byte)'\n' ? 2 : 1;
        }

        return lines;
    }
}
