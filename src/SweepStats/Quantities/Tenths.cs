using System.Globalization;

namespace SweepStats.Quantities;

/// <summary>Numbers with one decimal, as people read them: invariant, with a true minus sign, and no sign before zero.</summary>
/// <remarks>A number that misses a tenth by the last bits of a double is that tenth, and is not rounded to the next.</remarks>
public static class Tenths
{
    private const double LastBits = 1e-6;

    /// <summary>The nearest tenth: of a value.</summary>
    public static string Nearest(double value) => Text(value, Math.Round);

    /// <summary>The tenth below: of a lower limit, which is not to promise more than was computed.</summary>
    public static string Down(double value) => Text(value, Math.Floor);

    /// <summary>The tenth above: of an upper limit.</summary>
    public static string Up(double value) => Text(value, Math.Ceiling);

    private static string Text(double value, Func<double, double> round)
    {
        double tenths = value * 10, nearest = Math.Round(tenths);
        double rounded = Math.Abs(tenths - nearest) < LastBits ? nearest : round(tenths);
        string number = (rounded / 10).ToString("F1", CultureInfo.InvariantCulture);
        return number.StartsWith('-') ? (number == "-0.0" ? "0.0" : "\u2212" + number[1..]) : number;
    }
}
