using System.Globalization;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>Levels as a file gave them, rounded for reading. A hyphen is the minus sign, so that a level can be searched for in the file.</summary>
internal static class LevelText
{
    private const double Smallest = 0.001;
    private const double Largest = 1e6;

    /// <summary>A level to a thousandth, or to four digits where that would not do: "-103.304", "2.236E-05".</summary>
    public static string Of(double level, LevelUnit? unit)
    {
        if (!double.IsFinite(level))
        {
            return "not finite";
        }

        double size = Math.Abs(level);
        bool decibels = unit is null or < LevelUnit.Volts;
        if (size is 0 or (>= 1 and < Largest) || (decibels && size is >= Smallest and < Largest))
        {
            string text = level.ToString("0.###", CultureInfo.InvariantCulture);
            return text == "-0" ? "0" : text;
        }

        return level.ToString("G4", CultureInfo.InvariantCulture);
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
