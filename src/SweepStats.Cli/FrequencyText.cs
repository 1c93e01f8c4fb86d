using System.Globalization;
using SweepStats.Quantities;

namespace SweepStats.Cli;

/// <summary>Frequencies as people type them: 30e6, 433.9MHz, 1 GHz.</summary>
internal static class FrequencyText
{
    private static readonly (string Unit, double Hertz)[] Units = [("ghz", 1e9), ("mhz", 1e6), ("khz", 1e3), ("hz", 1)];

    /// <summary>The frequency, in Hz where no unit stands behind; null where it is no number above 0.</summary>
    public static Hertz? Parse(string text)
    {
        string number = text.Trim().ToLowerInvariant();
        double size = 1;
        foreach ((string unit, double hertz) in Units)
        {
            if (number.EndsWith(unit, StringComparison.Ordinal))
            {
                (number, size) = (number[..^unit.Length].TrimEnd(), hertz);
                break;
            }
        }

        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value * size) && value > 0
            ? new Hertz(value * size)
            : null;
    }
}
