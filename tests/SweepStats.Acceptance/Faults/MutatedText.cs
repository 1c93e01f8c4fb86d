using System.Text;

namespace SweepStats.Acceptance.Faults;

/// <summary>Spoils text as people, editors and disks do: bytes, words, lines and figures.</summary>
internal sealed class MutatedText(Random dice)
{
    private static readonly string[] Figures =
        ["0", "-0", "-1", "1e308", "-1e308", "1e-308", "1e999", "2147483648", "99999999999999999999", "nan", "inf", "-inf",
            "0x10", "1_000", "1,5", "00", "0.5", "1e15", "true", "\"\"", "[]", "{}", "2026-03-05"];

    private static readonly string[] Shards = ["\"", "'", "[", "]", "[[", "]]", "=", "#", ",", ";", "\n", "\r", "\t", " ", "\0",
        "\e[31m", "\ufeff", "\u202e", "é", "\"\"\"", "\\", "\\u0000", "..", "../../", "/etc/passwd", "{", "}", "."];

    /// <summary>The text with one to four things wrong.</summary>
    public byte[] Of(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        for (int i = dice.Next(4); i >= 0; i--)
        {
            bytes = dice.Next(6) switch
            {
                0 => Bytes(bytes),
                1 => Lines(bytes),
                2 => Figure(bytes),
                3 => Insert(bytes, Encoding.UTF8.GetBytes(Shards[dice.Next(Shards.Length)])),
                4 => Cut(bytes),
                _ => Word(bytes),
            };
        }

        return bytes;
    }

    private byte[] Bytes(byte[] bytes)
    {
        byte[] changed = [.. bytes];
        for (int i = dice.Next(4); i >= 0 && changed.Length > 0; i--)
        {
            changed[dice.Next(changed.Length)] = (byte)dice.Next(256);
        }

        return changed;
    }

    private byte[] Insert(byte[] bytes, byte[] shard)
    {
        int at = dice.Next(bytes.Length + 1);
        byte[] many = [.. Enumerable.Repeat(shard, dice.Next(20) == 0 ? 300 : 1).SelectMany(s => s)];
        return [.. bytes[..at], .. many, .. bytes[at..]];
    }

    private byte[] Cut(byte[] bytes)
    {
        int from = dice.Next(bytes.Length + 1), length = dice.Next(Math.Min(40, bytes.Length - from) + 1);
        return [.. bytes[..from], .. bytes[(from + length)..]];
    }

    private byte[] Lines(byte[] bytes)
    {
        List<string> lines = [.. Encoding.UTF8.GetString(bytes).Split('\n')];
        int one = dice.Next(lines.Count), other = dice.Next(lines.Count);
        switch (dice.Next(4))
        {
            case 0: lines.RemoveAt(one); break;
            case 1: lines.Insert(other, lines[one]); break;
            case 2: (lines[one], lines[other]) = (lines[other], lines[one]); break;
            default: lines.InsertRange(other, Enumerable.Repeat(lines[one], dice.Next(200))); break;
        }

        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private byte[] Figure(byte[] bytes)
    {
        string[] lines = Encoding.UTF8.GetString(bytes).Split('\n');
        int one = dice.Next(lines.Length);
        int equals = lines[one].LastIndexOfAny(['=', ',']);
        lines[one] = equals < 0 ? lines[one] : lines[one][..(equals + 1)] + " " + Figures[dice.Next(Figures.Length)];
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private byte[] Word(byte[] bytes)
    {
        string[] words = Encoding.UTF8.GetString(bytes).Split(' ');
        (int one, int other) = (dice.Next(words.Length), dice.Next(words.Length));
        words[one] = words[other];
        return Encoding.UTF8.GetBytes(string.Join(' ', words));
    }
}
