using System.Globalization;
using SweepStats.Studies.Trust;

namespace SweepStats.Studies.Benches;

/// <summary>How figures of the tables are written.</summary>
internal static class BenchFigures
{
    /// <summary>Two decimals; empty for what is not a number.</summary>
    public static string Number(double value) =>
        double.IsFinite(value) ? value.ToString("0.00", CultureInfo.InvariantCulture) : "";

    /// <summary>A share in percent with two decimals; empty for a share of nothing.</summary>
    public static string Percent(int count, int of) => of == 0 ? "" : Number(100.0 * count / of);

    /// <summary>A share with its unit, for reading; empty for a share of nothing.</summary>
    public static string Share(int count, int of) => of == 0 ? "" : new Share(count, of).Percent;

    /// <summary>The name of a value in lower case.</summary>
    public static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
