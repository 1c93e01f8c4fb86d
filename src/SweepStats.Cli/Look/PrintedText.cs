using System.Globalization;
using System.Text;

namespace SweepStats.Cli.Look;

/// <summary>Text out of a file or a file name, made harmless for a terminal.</summary>
internal static class PrintedText
{
    /// <summary>The text on one line. What would steer a terminal or turn the direction of writing becomes a blank.</summary>
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            plain.Append(IsHarmless(rune) ? rune.ToString() : " ");
        }

        return plain.ToString();
    }

    /// <summary>The same, cut to so many characters with an ellipsis.</summary>
    public static string Short(string text, int longest)
    {
        string plain = Of(text).Trim();
        var info = new StringInfo(plain);
        return info.LengthInTextElements <= longest ? plain : info.SubstringByTextElements(0, longest - 3).TrimEnd() + "...";
    }

    /// <summary>A printed line for outputs that know nothing but ASCII: µ as the u that stands for it in files.</summary>
    public static string Ascii(string line)
    {
        var plain = new StringBuilder(line.Length);
        foreach (Rune rune in line.EnumerateRunes())
        {
            plain.Append(rune.Value switch { 'µ' or 'μ' => "u", '…' => "...", _ => rune.IsAscii ? rune.ToString() : "?" });
        }

        return plain.ToString();
    }

    private static bool IsHarmless(Rune rune) =>
        !Rune.IsControl(rune) && rune.Value is not (0x061C or 0x200E or 0x200F or 0x2028 or 0x2029 or (>= 0x202A and <= 0x202E)
            or (>= 0x2066 and <= 0x2069));
}
