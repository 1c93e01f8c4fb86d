using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Unicode;

namespace SweepStats.Files.Traces.Text;

/// <summary>The bytes of a file in a pooled buffer, brought to UTF-8. The buffer belongs to the taker.</summary>
/// <param name="Buffer">Pooled buffer.</param>
/// <param name="Start">First byte after a byte order mark.</param>
/// <param name="End">One past the last byte.</param>
/// <param name="Sha256">Hash of the bytes as they are on disk.</param>
/// <param name="Assumption">What was taken for granted in decoding.</param>
internal readonly record struct FileBytes(byte[] Buffer, int Start, int End, string Sha256, string? Assumption)
{
    /// <summary>Longest file that is read: a trace of a thousand columns and ten thousand points stays below it.</summary>
    public const long LongestFile = 1L << 30;

    private const int Sampled = 4096;

    private static ReadOnlySpan<byte> Minus => "\u2212"u8;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="faults">Takes the reason where it cannot be read.</param>
    public static FileBytes? Read(string path, FaultList faults)
    {
        if (!IsReadable(path, faults))
        {
            return null;
        }

        try
        {
            using var handle = File.OpenHandle(path);
            long length = RandomAccess.GetLength(handle);
            byte[] buffer = ArrayPool<byte>.Shared.Rent((int)length);
            int got = 0;
            while (got < length && RandomAccess.Read(handle, buffer.AsSpan(got, (int)length - got), got) is > 0 and var more)
            {
                got += more;
            }

            return Decode(buffer, got);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(null, "the file cannot be opened: " + e.Message.TrimEnd('.'), "check that it exists and may be read");
            return null;
        }
    }

    /// <summary>The same for content that is already in memory, which is copied.</summary>
    public static FileBytes Of(ReadOnlySpan<byte> content)
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(content.Length);
        content.CopyTo(buffer);
        return Decode(buffer, content.Length);
    }

    // A pipe or a device has no length either, and opening it could wait for ever: it is turned away unopened.
    private static bool IsReadable(string path, FaultList faults)
    {
        var info = new FileInfo(path);
        FileSystemInfo target = info.LinkTarget is null ? info : info.ResolveLinkTarget(returnFinalTarget: true) ?? info;
        if (!File.Exists(path) || target is not FileInfo file || (file.Attributes & (FileAttributes.Device | FileAttributes.Directory)) != 0)
        {
            faults.Add(null, "there is no such file", "check the spelling of the path");
            return false;
        }

        if (file.Length == 0)
        {
            faults.Add(null, "the file is empty, or is not a regular file", "export the sweep again");
            return false;
        }

        if (file.Length > LongestFile)
        {
            faults.Add(null, "the file is larger than 1 GiB", "export fewer traces or points a file");
            return false;
        }

        return true;
    }

    private static FileBytes Decode(byte[] buffer, int length)
    {
        ReadOnlySpan<byte> bytes = buffer.AsSpan(0, length);
        string hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            return Checked(buffer, 3, length, hash);
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Converted(buffer, (2, length), bytes[0] == 0xFF ? Encoding.Unicode : Encoding.BigEndianUnicode, hash, null);
        }

        return bytes[..Math.Min(length, Sampled)].Contains((byte)0) && UnmarkedUtf16(bytes[..Math.Min(length, Sampled)]) is { } unmarked
            ? Converted(buffer, (0, length), unmarked, hash, "the text has no byte order mark and was read as UTF-16")
            : Checked(buffer, 0, length, hash);
    }

    // Two-byte text of Latin letters and digits has a NUL in every other byte, which padding has not.
    private static Encoding? UnmarkedUtf16(ReadOnlySpan<byte> sample)
    {
        (int even, int odd) = Nuls(sample);
        int half = sample.Length / 2;
        return Math.Max(even, odd) * 10 < half * 9 || Math.Min(even, odd) * 10 > half || half <= 2 ? null
            : even > odd ? Encoding.BigEndianUnicode : Encoding.Unicode;
    }

    private static (int Even, int Odd) Nuls(ReadOnlySpan<byte> bytes)
    {
        Span<int> found = stackalloc int[2];
        for (int i = 0; i < bytes.Length; i++)
        {
            found[i & 1] += bytes[i] == 0 ? 1 : 0;
        }

        return (found[0], found[1]);
    }

    private static FileBytes Checked(byte[] buffer, int start, int length, string hash)
    {
        Span<byte> bytes = buffer.AsSpan(start, length - start);
        string? assumption = null;
        if (bytes.Contains((byte)0))
        {
            // Some exports write a NUL after every field; it carries nothing.
            bytes = WithoutNuls(bytes);
            assumption = "NUL bytes in the text were passed over";
        }

        if (!Utf8.IsValid(bytes))
        {
            return Latin(buffer, start, start + bytes.Length, hash);
        }

        if (bytes.IndexOf(Minus) >= 0)
        {
            bytes = WithPlainMinus(bytes);
            assumption = "typographic minus signs were read as minus";
        }

        return new FileBytes(buffer, start, start + bytes.Length, hash, assumption);
    }

    // U+2212, as word processors put it before numbers; three bytes become one.
    private static Span<byte> WithPlainMinus(Span<byte> bytes)
    {
        int kept = 0;
        for (int i = 0; i < bytes.Length; i++)
        {
            bool minus = bytes[i] == Minus[0] && bytes[i..].StartsWith(Minus);
            bytes[kept++] = minus ? (byte)'-' : bytes[i];
            i += minus ? Minus.Length - 1 : 0;
        }

        return bytes[..kept];
    }

    private static Span<byte> WithoutNuls(Span<byte> bytes)
    {
        int kept = 0;
        foreach (byte b in bytes)
        {
            if (b != 0)
            {
                bytes[kept++] = b;
            }
        }

        return bytes[..kept];
    }

    // Every byte is a character; those above 0x7F take two bytes in UTF-8. Done by hand: a string in between would take eight times the file.
    private static FileBytes Latin(byte[] old, int start, int end, string hash)
    {
        ReadOnlySpan<byte> bytes = old.AsSpan(start, end - start);
        int high = 0;
        foreach (byte b in bytes)
        {
            high += b >> 7;
        }

        byte[] buffer = ArrayPool<byte>.Shared.Rent(bytes.Length + high);
        int at = 0;
        foreach (byte b in bytes)
        {
            if (b < 0x80)
            {
                buffer[at++] = b;
            }
            else
            {
                buffer[at++] = (byte)(0xC0 | (b >> 6));
                buffer[at++] = (byte)(0x80 | (b & 0x3F));
            }
        }

        ArrayPool<byte>.Shared.Return(old);
        return new FileBytes(buffer, 0, at, hash, "the text is not UTF-8 and was read as Latin-1");
    }

    private static FileBytes Converted(byte[] old, (int Start, int End) range, Encoding encoding, string hash, string? assumption)
    {
        char[] text = ArrayPool<char>.Shared.Rent(encoding.GetMaxCharCount(range.End - range.Start));
        int characters = encoding.GetChars(old, range.Start, range.End - range.Start, text, 0);
        byte[] buffer = ArrayPool<byte>.Shared.Rent(Encoding.UTF8.GetByteCount(text, 0, characters));
        int length = Encoding.UTF8.GetBytes(text, 0, characters, buffer, 0);
        ArrayPool<char>.Shared.Return(text);
        ArrayPool<byte>.Shared.Return(old);
        return new FileBytes(buffer, 0, WithoutNuls(buffer.AsSpan(0, length)).Length, hash, assumption);
    }
}
