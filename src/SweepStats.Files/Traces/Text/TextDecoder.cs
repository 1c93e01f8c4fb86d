using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Unicode;

namespace SweepStats.Files.Traces.Text;

/// <summary>
/// Brings the bytes of a file to UTF-8: byte order marks, UTF-16 with and without one, Latin-1, NUL bytes, typographic minus
/// signs.
/// </summary>
internal static class TextDecoder
{
    private const int Sampled = 4096;

    private static ReadOnlySpan<byte> Minus => "\u2212"u8;

    /// <summary>Decodes what a buffer holds; the buffer is given back where another takes its place.</summary>
    public static FileBytes Decode(byte[] buffer, int length)
    {
        ReadOnlySpan<byte> bytes = buffer.AsSpan(0, length);
        string hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            return Checked(buffer, 3, length, hash);
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Converted(buffer, 2..length, bytes[0] == 0xFF ? Encoding.Unicode : Encoding.BigEndianUnicode, hash, null);
        }

        return bytes[..Math.Min(length, Sampled)].Contains((byte)0)
            && UnmarkedUtf16(bytes[..Math.Min(length, Sampled)]) is { } unmarked
            ? Converted(buffer, ..length, unmarked, hash, "the text has no byte order mark and was read as UTF-16")
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

        if (Ascii.IsValid(bytes))
        {
            return new FileBytes(buffer, start, start + bytes.Length, hash, assumption);
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

    // Every byte is a character; those above 0x7F take two bytes in UTF-8. Done by hand: a string in between would take eight
    // times the file.
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

    private static FileBytes Converted(byte[] old, Range range, Encoding encoding, string hash, string? assumption)
    {
        ReadOnlySpan<byte> bytes = old.AsSpan(range);
        char[] text = ArrayPool<char>.Shared.Rent(encoding.GetMaxCharCount(bytes.Length));
        int characters = encoding.GetChars(bytes, text);
        byte[] buffer = ArrayPool<byte>.Shared.Rent(Encoding.UTF8.GetByteCount(text, 0, characters));
        int length = Encoding.UTF8.GetBytes(text, 0, characters, buffer, 0);
        ArrayPool<char>.Shared.Return(text);
        ArrayPool<byte>.Shared.Return(old);
        return new FileBytes(buffer, 0, WithoutNuls(buffer.AsSpan(0, length)).Length, hash, assumption);
    }
}
