using System.Globalization;
using SweepStats.Quantities;

namespace SweepStats.Checks;

/// <summary>Numbers as findings write them: invariant, as many digits as a bench needs.</summary>
internal static class Amount
{
    /// <summary>Invariant, with the minus sign that all sentences have; tables keep the one of the keyboard.</summary>
    public static CultureInfo Print { get; } = Printing();

    /// <summary>Decibels to a tenth.</summary>
    public static string Db(double value) => string.Create(Amount.Print, $"{value:0.0} dB");

    /// <summary>A level of a source, as fine as one is set.</summary>
    public static string Dbm(double value) => string.Create(Print, $"{value:0.##} dBm");

    /// <summary>A frequency in the unit that keeps it between 1 and 1000: "1.05 GHz".</summary>
    public static string Frequency(Hertz at) => at.Value switch
    {
        >= 1e9 => string.Create(Amount.Print, $"{at.Value / 1e9:0.######} GHz"),
        >= 1e6 => string.Create(Amount.Print, $"{at.Value / 1e6:0.######} MHz"),
        >= 1e3 => string.Create(Amount.Print, $"{at.Value / 1e3:0.######} kHz"),
        _ => string.Create(Amount.Print, $"{at.Value:0.######} Hz"),
    };

    /// <summary>How many of what, in the right number.</summary>
    public static string Count(int count, string one, string many) =>
        string.Create(Amount.Print, $"{count} {(count == 1 ? one : many)}");

    /// <summary>At how many frequencies out of how many.</summary>
    public static string OutOf(int part, int whole) => string.Create(Amount.Print, $"{part} of {whole} frequencies");

    /// <summary>Names as a list: "a, b and c", or "a, b and 7 more".</summary>
    /// <param name="names">At least one.</param>
    /// <param name="most">How many stand in it at most, counting the "more" as one.</param>
    public static string Names(IReadOnlyList<string> names, int most) => names.Count == 1 ? names[0]
        : names.Count <= most ? $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}"
        : $"{string.Join(", ", names.Take(most - 1))} and {Count(names.Count - most + 1, "more", "more")}";

    private static CultureInfo Printing()
    {
        var print = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        print.NumberFormat.NegativeSign = "−";
        return CultureInfo.ReadOnly(print);
    }
}
