using System.Runtime.CompilerServices;

namespace SweepStats.Files.Traces.Twins;

/// <summary>A level as most files write it: a sign or none, digits, a decimal point, digits; without decimals only where it is below 0.</summary>
internal static class PlainLevel
{
    // Of no more digits the number is below 2^53: it and the power of ten are exact, and one division is rounded correctly.
    private const int MostDigits = 15;

    private static readonly double[] PowersOfTen = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Reads the level at the start of a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="level">The level, bit for bit what <see cref="Text.StrictNumber"/> makes of the same characters.</param>
    /// <returns>How many characters it has; 0 where the text begins with no such level.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Read(ReadOnlySpan<byte> text, out double level)
    {
        int sign = !text.IsEmpty && text[0] == (byte)'-' ? 1 : 0;
        int at = sign;
        ulong digits = 0;
        at = Digits(text, at, ref digits);
        int whole = at - sign;
        int decimals = 0;
        if (at < text.Length && text[at] == (byte)'.')
        {
            int point = at;
            at = Digits(text, at + 1, ref digits);
            decimals = at - point - 1;
        }

        bool isPlain = whole > 0 && whole + decimals <= MostDigits && (decimals > 0 || (sign > 0 && text[at - 1] != (byte)'.'));
        double size = isPlain ? digits / PowersOfTen[decimals] : 0;
        level = sign > 0 ? -size : size;
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
