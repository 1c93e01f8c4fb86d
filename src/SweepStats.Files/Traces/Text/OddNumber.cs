using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Text;

/// <summary>
/// Recognises what people and programs write for numbers and this program does not read as such, to tell them what it is.
/// </summary>
internal static partial class OddNumber
{
    // The search goes with the square of the length at worst; a number with thousands stands at the start of a row.
    private const int LongestLooked = 200;

    /// <summary>
    /// What is odd about a field, as the end of a sentence that began with the field; null where nothing is known about it.
    /// </summary>
    public static string? Oddity(string field, byte decimalMark) =>
        field.Length > LongestLooked ? null
        : Grouped().IsMatch(field) ? "has thousands separators"
        : decimalMark == (byte)'.' && CommaDecimal().IsMatch(field)
            ? "has a decimal comma, and this file is read with decimal points"
        : decimalMark == (byte)',' && PointDecimal().IsMatch(field)
            ? "has a decimal point, and this file is read with decimal commas"
        : null;

    /// <summary>
    /// The first number with thousands separators in a line that starts like a row of numbers; null where there is none.
    /// </summary>
    public static string? GroupedIn(string line) => StartsLikeRow(line)
        && GroupedWithin().Match(line[..Math.Min(line.Length, LongestLooked)]) is { Success: true } match ? match.Value : null;

    /// <summary>
    /// The first number of a row whose thousands are parted by plain blanks, as in <c>30 000 000;-80</c>; null where there is
    /// none. Between blanks alone nobody can tell.
    /// </summary>
    public static string? GroupedByBlanks(string line) =>
        GroupedBlanks().Match(line[..Math.Min(line.Length, LongestLooked)]) is { Success: true } match
            ? match.Groups[1].Value : null;

    /// <summary>
    /// Whether a row of numbers opens a quote and never closes it. A line with words is none: 19" may be a width.
    /// </summary>
    public static bool HasStrayQuote(string line) => line.Count(c => c == '"') % 2 == 1 && NumbersOnly().IsMatch(line);

    private static bool StartsLikeRow(string line) => RowStart().IsMatch(line);

    // 30.000.000; 30'000'000; 1.234,5; 1,234.5; one group alone, as in 30.000, is a plain decimal number.
    private const string Groups =
        @"[+-]?\d{1,3}(?:(?<s>[.,' \u2019\u00A0\u2009\u202F])\d{3}(?:\k<s>\d{3})+(?:[.,]\d+)?|(?:\.\d{3})+,\d+|(?:,\d{3})+\.\d+|"
            + @"['\u2019\u00A0\u2009\u202F]\d{3}(?:[.,]\d+)?)";

    [GeneratedRegex("^" + Groups + "$", RegexOptions.CultureInvariant)]
    private static partial Regex Grouped();

    [GeneratedRegex(@"(?<![\d.,'])" + Groups + @"(?![\d']|[.,]\d)", RegexOptions.CultureInvariant)]
    private static partial Regex GroupedWithin();

    [GeneratedRegex(@"^[+-]?\d+,\d+(?:[eE][+-]?\d+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex CommaDecimal();

    [GeneratedRegex(@"^[+-]?\d+\.\d+(?:[eE][+-]?\d+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex PointDecimal();

    [GeneratedRegex(@"^(?=.*\d)[\d\s.,;""'+\-eE]+$", RegexOptions.CultureInvariant)]
    private static partial Regex NumbersOnly();

    [GeneratedRegex(@"^[\s""]*([1-9]\d{0,2}(?: \d{3})+)""?[ ]*[;\t][ ""]*[+-]?\d", RegexOptions.CultureInvariant)]
    private static partial Regex GroupedBlanks();

    [GeneratedRegex(@"^[\s""]*[+-]?\d", RegexOptions.CultureInvariant)]
    private static partial Regex RowStart();
}
