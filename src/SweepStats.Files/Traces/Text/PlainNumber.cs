using System.Runtime.CompilerServices;

namespace SweepStats.Files.Traces.Text;

/// <summary>
/// A number as most files write it: a minus or none, digits, perhaps a mark and decimals. Anything else is for
/// <see cref="StrictNumber"/>.
/// </summary>
internal static class PlainNumber
{
    // Of no more digits the number is below 2^53: it and the power of ten are exact, and one division is rounded correctly.
    private const int MostDigits = 15;

    private static ReadOnlySpan<double> PowersOfTen =>
        [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Reads the number at the start of a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="decimalMark">What stands before decimals.</param>
    /// <param name="value">The number, bit for bit what <see cref="StrictNumber"/> makes of the same characters.</param>
    /// <returns>How many characters it has; 0 where the text begins with no such number.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Read(ReadOnlySpan<byte> text, byte decimalMark, out double value)
    {
        int sign = !text.IsEmpty && text[0] == (byte)'-' ? 1 : 0;
        ulong digits = 0;
        int at = Digits(text, sign, ref digits);
        int count = at - sign;
        int decimals = 0;
        bool isWhole = count > 0;
        if (at < text.Length && text[at] == decimalMark)
        {
            int point = at;
            at = Digits(text, at + 1, ref digits);
            decimals = at - point - 1;
            isWhole &= decimals > 0;
        }

        bool isPlain = isWhole && count + decimals <= MostDigits;
        double size = isPlain ? digits / PowersOfTen[decimals] : 0;
        value = sign > 0 ? -size : size;
        return isPlain ? at : 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Digits(ReadOnlySpan<byte> text, int at, ref ulong number)
    {
        for (; at < text.Length && unchecked((uint)text[at] - '0') is <= 9 and var digit; at++)
        {
            number = unchecked((number * 10) + digit);
        }

        return at;
    }
}
