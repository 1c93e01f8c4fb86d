using System.CommandLine.Parsing;
using System.Globalization;

namespace SweepStats.Cli;

/// <summary>Numbers on the command line: a decimal point, never a comma, whatever the machine's language.</summary>
internal static class NumberText
{
    /// <summary>A finite number; 0 with an error that says what to write where it is none.</summary>
    public static double Real(ArgumentResult words) => Real(words, words.Tokens[0].Value);

    /// <summary>The same for an option that may be absent.</summary>
    public static double? MaybeReal(ArgumentResult words) => Real(words);

    /// <summary>A finite number for each word, in their order; 0 with an error for one that is none.</summary>
    public static double[] Reals(ArgumentResult words) => [.. words.Tokens.Select(token => Real(words, token.Value))];

    /// <summary>A whole number of 32 bits, signed; 0 with an error where it is none or too large.</summary>
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

    /// <summary>A whole number from 0, of 64 bits; 0 with an error where it is none.</summary>
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
