using System.Globalization;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>First and last frequency out of what lines state otherwise: centre and span, or both ends in one value.</summary>
internal static partial class StatedRange
{
    private const int LongestRange = 100;

    /// <summary>Start and stop of a value such as "30 MHz to 1 GHz" or "30 - 1000 MHz"; null for anything else.</summary>
    public static ImmutableArray<string>? Ends(string value)
    {
        if (value.Length > LongestRange || Shape().Match(value.Trim()) is not { Success: true } match)
        {
            return null;
        }

        (string start, string stop) = (match.Groups[2].Value, match.Groups[4].Value);
        return [$"{match.Groups[1].Value} {(start.Length > 0 ? start : stop)}".Trim(), $"{match.Groups[3].Value} {stop}".Trim()];
    }

    /// <summary>
    /// An end of the range that centre and span make; null where one of them is missing or only one has a unit.
    /// </summary>
    /// <param name="centre">The frequency in the middle.</param>
    /// <param name="span">Last less first frequency.</param>
    /// <param name="side">−1 for the first frequency, 1 for the last.</param>
    /// <param name="line">The line that states the centre.</param>
    public static StatedBound? Bound(StatedNumber? centre, StatedNumber? span, int side, int line)
    {
        if (centre is not { } c || span is not { } s)
        {
            return null;
        }

        bool bare = c.Unit.Length == 0 && s.Unit.Length == 0;
        if ((bare ? c.Value() : c.Hertz()) is not { } middle || (bare ? s.Value() : s.Hertz()) is not { } width
            || Math.Abs(middle) + Math.Abs(width) > 1e24)
        {
            return null;
        }

        // In decimals, so that 515 MHz less half of 970 MHz are exactly 30 MHz.
        decimal end = (decimal)middle + (side * (decimal)width / 2);
        double rounding = Rounding(c) + (Rounding(s) / 2);
        return new StatedBound(new StatedNumber(end.ToString(CultureInfo.InvariantCulture), bare ? "" : "Hz"), rounding, line);
    }

    /// <summary>
    /// What to say where start and stop state one range, and centre and span another; null where they agree by the digits they
    /// are written in.
    /// </summary>
    public static string? Other(StatedNumber? start, StatedNumber? stop, StatedNumber? centre, StatedNumber? span)
    {
        if (start is not { } first || stop is not { } last
            || Bound(centre, span, -1, 0) is not { } low || Bound(centre, span, 1, 0) is not { } high)
        {
            return null;
        }

        return !Apart(first, low) && !Apart(last, high) ? null
            : $"the file states a range from {first.Digits} {first.Unit} to {last.Digits} {last.Unit}, "
                + $"and by centre and span one from {low.Shown} to {high.Shown}";
    }

    // Both with units: bare numbers may be in different ones.
    private static bool Apart(StatedNumber end, StatedBound bound) => end.Hertz() is { } one && bound.Hertz() is { } other
        && Math.Abs(one - other) > Rounding(end) + bound.RoundingHertz() + (1e-6 * Math.Max(Math.Abs(one), Math.Abs(other)));

    /// <summary>
    /// The last frequency that equal steps reach from the first; null where a part is missing or only one has a unit.
    /// </summary>
    /// <param name="start">The first frequency.</param>
    /// <param name="step">The distance of two.</param>
    /// <param name="points">How many frequencies there are.</param>
    public static StatedBound? Reached(StatedBound? start, StatedNumber? step, int points)
    {
        if (start is not { } from || step is not { } by)
        {
            return null;
        }

        bool bare = from.Number.Unit.Length == 0 && by.Unit.Length == 0;
        if ((bare ? from.Number.Value() : from.Hertz()) is not { } first || (bare ? by.Value() : by.Hertz()) is not { } width
            || Math.Abs(first) + (Math.Abs(width) * points) > 1e24)
        {
            return null;
        }

        decimal end = (decimal)first + ((decimal)width * (points - 1));
        return new StatedBound(new StatedNumber(end.ToString(CultureInfo.InvariantCulture), bare ? "" : "Hz"), 0, from.Line);
    }

    /// <summary>Half a unit of the last digit that a number is written with, in Hz where its unit is one of frequency.</summary>
    public static double Rounding(StatedNumber number) =>
        RoundingInUnit(number) * Math.Pow(10, FrequencyUnits.Parse(number.Unit)?.Exponent() ?? 0);

    /// <summary>The same in the unit of the number.</summary>
    public static double RoundingInUnit(StatedNumber number)
    {
        int power = number.Digits.AsSpan().IndexOfAny('e', 'E');
        ReadOnlySpan<char> mantissa = power < 0 ? number.Digits : number.Digits.AsSpan(0, power);
        int point = mantissa.IndexOf('.');
        int decimals = point < 0 ? 0 : mantissa.Length - point - 1;
        int exponent = power >= 0 && int.TryParse(number.Digits.AsSpan(power + 1), NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture, out int stated) ? stated : 0;
        return 0.5 * Math.Pow(10, exponent - decimals);
    }

    [GeneratedRegex(
        @"^([0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]{1,2})?)\s*([kKmMgG]?[hH][zZ])?\s*(?:-|–|…|\.\.\.?|/|,|;|to|bis|à|a|hasta|until)"
            + @"\s*([0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]{1,2})?)\s*([kKmMgG]?[hH][zZ])?$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
