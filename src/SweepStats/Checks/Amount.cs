using System.Globalization;

namespace SweepStats.Checks;

/// <summary>Numbers as findings write them: invariant, as many digits as a bench needs.</summary>
internal static class Amount
{
    public static string Db(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} dB");

    public static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    public static string OutOf(int part, int whole) => string.Create(CultureInfo.InvariantCulture, $"{part} of {whole} frequencies");
}
