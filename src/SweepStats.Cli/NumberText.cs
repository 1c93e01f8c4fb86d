using System.CommandLine.Parsing;
using System.Globalization;

namespace SweepStats.Cli;

/// <summary>Numbers on the command line: a decimal point, never a comma, whatever the machine's language.</summary>
internal static class NumberText
{
    public static double Real(ArgumentResult words) => Real(words, words.Tokens[0].Value);

    public static double? MaybeReal(ArgumentResult words) => Real(words);

    public static double[] Reals(ArgumentResult words) => [.. words.Tokens.Select(token => Real(words, token.Value))];

    public static int Whole(ArgumentResult words)
    {
        string text = words.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
        {
            return value;
        }

        bool isWhole = text.TrimStart('+', '-') is { Length: > 0 } digits && digits.All(char.IsAsciiDigit);
        words.AddError($"{Option(words)} {text}: {(isWhole ? "this number is too large" : "this is not a whole number")}");
        return 0;
    }

    public static ulong Seed(ArgumentResult words)
    {
        string text = words.Tokens[0].Value;
        if (ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out ulong value))
        {
            return value;
        }

        words.AddError($"{Option(words)} {text}: a seed is a whole number, not negative");
        return 0;
    }

    private static double Real(ArgumentResult words, string text)
    {
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value))
        {
            return value;
        }

        words.AddError($"{Option(words)} {text}: this is not a number; write 40.5, with a decimal point");
        return 0;
    }

    private static string Option(ArgumentResult words) => (words.Parent as OptionResult)?.Option.Name ?? words.Argument.Name;
}
