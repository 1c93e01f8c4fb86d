using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Report;

/// <summary>
/// Every sentence that a reader of the page or of the console summary sees, and how numbers are printed in them: invariant of culture, estimates rounded
/// to the nearest tenth, limits rounded away from the claim so that no print-out promises more than was computed.
/// </summary>
public static partial class Wording
{
    internal const string NothingFound = "The checks that could be made found nothing that limits it.";
    internal const string RepeatsOnly = "The intervals cover how well sweeps repeat, not how well a specimen can be put back.";

    private const string Unblocked = "none";
    private const string PlacementCode = "placement-unknown";

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

    /// <summary>A ratio to the nearest tenth: "34.2 dB".</summary>
    public static string Ratio(double decibels) => Tenths(decibels, Math.Round) + " dB";

    /// <summary>A level to the nearest tenth with its unit: "−87.3 dBm".</summary>
    public static string Level(double decibels, LevelScale scale) => Tenths(decibels, Math.Round) + " " + Unit(scale);

    /// <summary>The unit that levels of a scale are printed in.</summary>
    public static string Unit(LevelScale scale) => scale.Symbol();

    /// <summary>A lower bound, rounded down: "≥ 52.3 dB". A bound is never printed without the sign.</summary>
    public static string Bound(Decibels bound) => $"≥ {LowTenths(bound.Value)} dB";

    /// <summary>An interval rounded outwards: "44.1 to 46.6 dB"; an open upper end reads "44.1 dB or more".</summary>
    public static string Interval(double low, double high) =>
        double.IsFinite(high) ? $"{LowTenths(low)} to {HighTenths(high)} dB" : $"{LowTenths(low)} dB or more";

    /// <summary>A share from 0 to 1 in percent, to the nearest tenth: "87.5 %".</summary>
    public static string Percent(double share) => Tenths(share * 100, Math.Round) + " %";

    /// <summary>A confidence level in percent: "95 %".</summary>
    public static string Level(Statistics.Confidence confidence) => Plain(Math.Round(confidence.Level * 100, 3)) + " %";

    /// <summary>A specimen by lot and name, harmless to print.</summary>
    public static string SpecimenLabel(SpecimenName name) => PlainText.Of(name.ToString());

    /// <summary>A count with its noun: "1 sweep", "3 sweeps", "2 frequencies".</summary>
    public static string Count(int count, string noun)
    {
        string many = noun.EndsWith('y') ? noun[..^1] + "ies" : noun + "s";
        return string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? noun : many)}");
    }

    /// <summary>
    /// A blocked share in percent with as many digits as the share that passes needs (two), rounded down, or up for an upper limit: "99.962 %". Nothing blocked, or more
    /// arriving than without the specimen, reads "none".
    /// </summary>
    internal static string Blocked(double share, bool up = false)
    {
        if (!(share > 0))
        {
            return Unblocked;
        }

        double passes = 1 - share;
        int digits = passes >= 0.01 ? 1 : (int)Math.Min(10, -Math.Floor(Math.Log10(Math.Max(passes, 1e-12))) - 1);
        double scale = Math.Pow(10, digits);
        double rounded = (up ? Math.Ceiling((share * 100 * scale) - 1e-9) : Math.Floor((share * 100 * scale) + 1e-9)) / scale;
        return Sign(rounded.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)) + " %";
    }

    internal static string LowTenths(double value) => Tenths(value, Math.Floor);

    internal static string HighTenths(double value) => Tenths(value, Math.Ceiling);

    /// <summary>A number as short as it goes, with a true minus sign: "0.4", "−10".</summary>
    internal static string Plain(double value) => Sign(value.ToString("0.##########", CultureInfo.InvariantCulture));

    private static double Significant(double value) =>
        value == 0 ? 0 : double.Parse(value.ToString("E3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Tenths(double value, Func<double, double> round)
    {
        // A limit that misses a tenth by the last bits of a double is that tenth.
        double tenths = value * 10;
        double nearest = Math.Round(tenths);
        double rounded = Math.Abs(tenths - nearest) < 1e-6 ? nearest : round(tenths);
        return Sign((rounded / 10).ToString("F1", CultureInfo.InvariantCulture));
    }

    private static string Sign(string number) =>
        number.StartsWith('-') ? (number.AsSpan(1).IndexOfAnyExcept("0.") < 0 ? number[1..] : "−" + number[1..]) : number;
}
