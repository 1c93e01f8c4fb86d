using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>A number and its unit as a line above the data states them: "10 kHz", "9.758GHz", "9000", "0,1 MHz".</summary>
/// <param name="Digits">The number, with a point for its decimal mark.</param>
/// <param name="Unit">The unit as written; empty for none.</param>
internal readonly partial record struct StatedNumber(string Digits, string Unit)
{
    private const int Group = 3;

    /// <summary>Reads it; null for anything else, and for a number that can be read in two ways, such as "1,234".</summary>
    public static StatedNumber? Parse(string text) =>
        Shape().Match(text) is { Success: true } match && Decimal(match.Groups[1].Value) is { } digits
            ? new StatedNumber(digits, match.Groups[2].Value.Trim())
            : null;

    /// <summary>The number times a power of ten.</summary>
    public double? Value(int exponent = 0) =>
        StrictNumber.TryParse(Encoding.ASCII.GetBytes(Digits), (byte)'.', exponent, out double value) ? value : null;

    /// <summary>
    /// In Hz; null where no unit of frequency is stated, here or as the usual one. "10k" is short for 10 kHz, "1M" for 1 MHz.
    /// </summary>
    public double? Hertz(FrequencyUnit? usual = null) => (Unit switch
    {
        "" => usual,
        "k" or "K" => FrequencyUnit.Kilohertz,
        "M" => FrequencyUnit.Megahertz,
        "G" => FrequencyUnit.Gigahertz,
        _ => FrequencyUnits.Parse(Unit),
    }) is { } unit ? Value(unit.Exponent()) : null;

    /// <summary>In seconds; null where no unit of time is stated.</summary>
    public double? Seconds() => Unit.ToLower(CultureInfo.InvariantCulture) switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" or "sek" or "sekunden" or "secondes" => Value(),
        "ms" or "msec" or "milliseconds" => Value(-3),
        "us" or "µs" or "μs" or "usec" or "microseconds" => Value(-6),
        _ => null,
    };

    // A comma before other than three digits, or behind a leading zero, is decimal; several groups of three are thousands.
    private static string? Decimal(string number)
    {
        int comma = number.IndexOf(',', StringComparison.Ordinal);
        if (comma < 0)
        {
            return number;
        }

        if (number.LastIndexOf(',') > comma)
        {
            return number.Replace(",", "", StringComparison.Ordinal);
        }

        int fraction = number.AsSpan(comma + 1).IndexOfAnyExceptInRange('0', '9') is >= 0 and var end ? end
            : number.Length - comma - 1;
        ReadOnlySpan<char> whole = number.AsSpan(0, comma).TrimStart("+-");
        bool two = fraction == Group && whole.Length <= Group && whole[0] != '0';
        return two ? null : number.Replace(',', '.');
    }

    [GeneratedRegex(
        @"^([-+]?(?:[0-9]{1,3}(?:,[0-9]{3}){2,}(?:\.[0-9]*)?|[0-9]+[.,]?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]{1,3})?)"
            + @"\s*([\p{L}µμ/%]*)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
