using System.Globalization;
using SweepStats.Quantities;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.Text;

/// <summary>Frequencies as a reader sees them.</summary>
public static class PrintedFrequency
{
    private static readonly (double Size, string Unit)[] FrequencyUnits = [(1, "Hz"), (1e3, "kHz"), (1e6, "MHz"), (1e9, "GHz")];

    /// <summary>A frequency with four significant digits: "433.9 MHz".</summary>
    public static string Frequency(Hertz frequency)
    {
        int unit = 0;
        while (unit + 1 < FrequencyUnits.Length && Significant(frequency.Value / FrequencyUnits[unit].Size) >= 1000)
        {
            unit++;
        }

        return Plain(Significant(frequency.Value / FrequencyUnits[unit].Size)) + " " + FrequencyUnits[unit].Unit;
    }

    /// <summary>A stretch of frequencies: "30 MHz to 1 GHz", or one frequency where both ends print alike.</summary>
    public static string Band(FrequencyBand band)
    {
        string start = Frequency(band.Start);
        string stop = Frequency(band.Stop);
        return start == stop ? start : $"{start} to {stop}";
    }

    private static double Significant(double value) =>
        value == 0 ? 0 : double.Parse(value.ToString("E3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
