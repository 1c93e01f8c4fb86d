using System.Globalization;

namespace SweepStats.Report.Text;

/// <summary>Numbers as a reader sees them: invariant of culture, estimates rounded to the nearest tenth.</summary>
public static class Printed
{
    internal const string Unblocked = "none";

    /// <summary>A share from 0 to 1 in percent, to the nearest tenth: "87.5 %".</summary>
    public static string Percent(double share) => Tenths(share * 100, Math.Round) + " %";

    /// <summary>A confidence level in percent: "95 %".</summary>
    public static string Level(Statistics.Confidence confidence) => Plain(Math.Round(confidence.Level * 100, 3)) + " %";

    /// <summary>A count with its noun: "1 sweep", "3 sweeps", "2 frequencies".</summary>
    public static string Count(int count, string noun)
    {
        string many = noun.EndsWith('y') ? noun[..^1] + "ies" : noun + "s";
        return string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? noun : many)}");
    }

    /// <summary>
    /// A blocked share in percent with as many digits as the share that passes needs (two), rounded down, or up for an upper
    /// limit: "99.962 %". Nothing blocked, or more arriving than without the specimen, reads "none".
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

    internal static string Tenths(double value, Func<double, double> round)
    {
        // A limit that misses a tenth by the last bits of a double is that tenth.
        double tenths = value * 10;
        double nearest = Math.Round(tenths);
        double rounded = Math.Abs(tenths - nearest) < 1e-6 ? nearest : round(tenths);
        return Sign((rounded / 10).ToString("F1", CultureInfo.InvariantCulture));
    }

    internal static string Sign(string number) =>
        number.StartsWith('-') ? (number.AsSpan(1).IndexOfAnyExcept("0.") < 0 ? number[1..] : "−" + number[1..]) : number;

    internal static string Exact(double value, string unit) => $"{Plain(value)} {unit}";

    /// <summary>A scatter in dB with two decimals; what would print as nothing is "below 0.01 dB".</summary>
    internal static string Small(double decibels) => decibels < 0.005 ? "below 0.01 dB" : Exact(Math.Round(decibels, 2), "dB");

    internal const string Nothing = "–";
}
