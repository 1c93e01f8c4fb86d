using System.Globalization;

namespace SweepStats.Cli.Look;

/// <summary>Frequencies as a file gave them, with an engineering unit: "433.92 MHz", "9.75808601 GHz".</summary>
internal static class ReadFrequency
{
    private const int Digits = 12;
    private const double Largest = 1e15;

    private static readonly (decimal Hertz, string Unit)[] Units = [(1e9m, "GHz"), (1e6m, "MHz"), (1e3m, "kHz"), (1, "Hz")];

    /// <summary>
    /// The frequency to twelve digits: a millihertz at 1 GHz, which is finer than any bench needs and hides the last bits of a
    /// conversion.
    /// </summary>
    public static string Text(double hertz)
    {
        if (!(hertz is > 0 and < Largest))
        {
            return hertz.ToString("R", CultureInfo.InvariantCulture) + " Hz";
        }

        // Scaled as a decimal number, so that 300 MHz never prints as 299.999.
        decimal exact =
            decimal.Parse(hertz.ToString("G" + Digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
                NumberStyles.Float, CultureInfo.InvariantCulture);
        (decimal size, string unit) = Units.FirstOrDefault(u => exact >= u.Hertz, Units[^1]);
        return (exact / size).ToString("0.############################", CultureInfo.InvariantCulture) + " " + unit;
    }
}
