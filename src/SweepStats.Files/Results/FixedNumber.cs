using System.Globalization;

namespace SweepStats.Files.Results;

/// <summary>
/// Numbers with a fixed number of decimals, straight into bytes: the digits of the runtime's own form, at a sixth of its time.
/// </summary>
internal static class FixedNumber
{
    private const int MostDecimals = 6;

    // Within a thousandth of a unit of a tie the product may have been rounded over it; from there on doubles hold no such
    // fraction.
    private const double NearTie = 1e-3;
    private const double Largest = 1e11;

    private static readonly double[] Scales = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];
    private static readonly string[] Forms = ["F0", "F1", "F2", "F3", "F4", "F5", "F6"];

    /// <summary>Writes a finite number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">1 to 6.</param>
    /// <param name="to">Where to; 330 bytes serve any number.</param>
    /// <returns>Bytes written.</returns>
    public static int Write(double value, int decimals, Span<byte> to)
    {
        double scaled = Math.Abs(value) * Scales[decimals], whole = Math.Floor(scaled), rest = scaled - whole;
        if (!(scaled < Largest) || Math.Abs(rest - 0.5) < NearTie || decimals is < 1 or > MostDecimals)
        {
            value.TryFormat(to, out int formatted, Forms[decimals], CultureInfo.InvariantCulture);
            return formatted;
        }

        ulong units = (ulong)whole + (rest > 0.5 ? 1u : 0u);
        int length = 0;
        if (double.IsNegative(value))
        {
            to[length++] = (byte)'-';
        }

        int point = length + Math.Max(1, Digits(units) - decimals);
        units = Put(units, to.Slice(point + 1, decimals));
        to[point] = (byte)'.';
        Put(units, to[length..point]);
        return point + 1 + decimals;
    }

    private static int Digits(ulong units)
    {
        int digits = 1;
        for (ulong next = 10; units >= next; next *= 10)
        {
            digits++;
        }

        return digits;
    }

    // Fills all places with the last digits, and returns what is left of the number before them.
    private static ulong Put(ulong units, Span<byte> places)
    {
        for (int i = places.Length - 1; i >= 0; i--, units /= 10)
        {
            places[i] = (byte)('0' + (units % 10));
        }

        return units;
    }
}
