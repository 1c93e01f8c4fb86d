using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>A number and its unit as a line above the data states them: "10 kHz", "9.758GHz", "9000".</summary>
/// <param name="Digits">The number as written.</param>
/// <param name="Unit">The unit as written; empty for none.</param>
internal readonly partial record struct StatedNumber(string Digits, string Unit)
{
    /// <summary>Reads it; null for anything else.</summary>
    public static StatedNumber? Parse(string text) =>
        Shape().Match(WithPoint(text)) is { Success: true } match ? new StatedNumber(match.Groups[1].Value, match.Groups[2].Value.Trim()) : null;

    // One comma that cannot part thousands is decimal: "2,44 GHz", and not "1,200 MHz".
    private static string WithPoint(string text)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        int end = comma + 1;
        while (comma > 0 && end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return comma > 0 && end - comma - 1 is not (0 or 3) && text.LastIndexOf(',') == comma ? text.Replace(',', '.') : text;
    }

    /// <summary>The number times a power of ten.</summary>
    public double? Value(int exponent = 0) => StrictNumber.TryParse(Encoding.ASCII.GetBytes(Digits), (byte)'.', exponent, out double value) ? value : null;

    /// <summary>In Hz; null where no unit of frequency is stated, here or as the usual one.</summary>
    public double? Hertz(FrequencyUnit? usual = null) =>
        (Unit.Length == 0 ? usual : FrequencyUnits.Parse(Unit)) is { } unit ? Value(unit.Exponent()) : null;

    /// <summary>In seconds; null where no unit of time is stated.</summary>
    public double? Seconds() => Unit.ToLower(CultureInfo.InvariantCulture) switch
    {
        "s" or "sec" or "second" or "seconds" => Value(),
        "ms" => Value(-3),
        "us" or "µs" or "μs" => Value(-6),
        _ => null,
    };

    [GeneratedRegex(@"^([-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]{1,3})?)\s*([\p{L}µμ/%]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
