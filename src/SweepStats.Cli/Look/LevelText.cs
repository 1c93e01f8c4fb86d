using System.Globalization;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>
/// Levels as a file gave them, rounded for reading. A hyphen is the minus sign, so that a level can be searched for in the file.
/// </summary>
internal static class LevelText
{
    private const double Smallest = 0.001;
    private const double Largest = 1e6;

    /// <summary>
    /// A level in dB to a thousandth, any other, or one that this would hide, to six digits: "-103.304", "2.23607E-05".
    /// </summary>
    public static string Of(double level, LevelUnit? unit)
    {
        if (!double.IsFinite(level))
        {
            return "not finite";
        }

        bool decibels = unit is null or < LevelUnit.Volts;
        return level.ToString(decibels && Math.Abs(level) is >= Smallest and < Largest ? "0.###" : "G6",
            CultureInfo.InvariantCulture);
    }

    /// <summary>The lowest and the highest level that is finite; null where none is.</summary>
    public static (double Low, double High)? Range(Trace trace)
    {
        (double low, double high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (double level in trace.Levels)
        {
            if (double.IsFinite(level))
            {
                (low, high) = (Math.Min(low, level), Math.Max(high, level));
            }
        }

        return low <= high ? (low, high) : null;
    }
}
