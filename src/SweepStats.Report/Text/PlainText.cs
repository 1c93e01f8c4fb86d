using System.Globalization;
using System.Text;

namespace SweepStats.Report.Text;

/// <summary>Makes text that came from files harmless before it reaches a page, a chart or a terminal.</summary>
internal static class PlainText
{
    private const char Replacement = '\uFFFD';

    /// <summary>
    /// Replaces what XML forbids, what steers a terminal, and what turns the direction of writing; line ends become blanks.
    /// </summary>
    public static string Of(string text)
    {
        // Most texts are numbers and plain words.
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                plain.Append(text, i++, 2);
            }
            else
            {
                plain.Append(Harmless(text[i]));
            }
        }

        return plain.ToString();
    }

    /// <summary>At most so many characters, as a reader counts them, with an ellipsis where something was cut.</summary>
    public static string Short(string text, int longest)
    {
        string plain = Of(text).Trim();
        int[] starts = StringInfo.ParseCombiningCharacters(plain);
        return starts.Length <= longest ? plain : plain[..starts[longest - 1]].TrimEnd() + "…";
    }

    private static char Harmless(char c) => c switch
    {
        '\t' or '\r' or '\n' or '\u2028' or '\u2029' => ' ',
        < ' ' or (>= '\u007F' and <= '\u009F') or '\uFFFE' or '\uFFFF' => Replacement,
        (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') => Replacement,
        _ when char.IsSurrogate(c) => Replacement,
        _ => c,
    };
}
