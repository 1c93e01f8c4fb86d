using System.Globalization;
using System.Text;

namespace SweepStats.Files.Traces.Text;

/// <summary>
/// Reads a decimal number and nothing else: no blanks inside, no thousands separators, no NaN or infinity. Library parsers let
/// <c>1,5</c> through as 15, which turns a decimal-comma file into levels a factor of ten or a hundred off.
/// </summary>
/// <remarks>
/// Exact to the last bit: up to 15 digits and small exponents by one multiplication or division (Clinger 1990), else by the
/// runtime.
/// </remarks>
internal static class StrictNumber
{
    private const ulong ExactMantissa = 1UL << 53;
    private const int LongestText = 200;

    private static readonly double[] PowersOfTen =
        [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
            1e20, 1e21, 1e22];

    /// <summary>Reads a whole field.</summary>
    /// <param name="field">Text without surrounding blanks.</param>
    /// <param name="decimalMark">Point or comma.</param>
    /// <param name="exponent">Power of ten that the number is multiplied by, before rounding.</param>
    /// <param name="value">The number; finite.</param>
    /// <returns>False where the field is anything but one finite number.</returns>
    public static bool TryParse(ReadOnlySpan<byte> field, byte decimalMark, int exponent, out double value)
    {
        value = 0;
        int at = field.Length > 0 && field[0] is (byte)'-' or (byte)'+' ? 1 : 0;
        ulong mantissa = 0;
        int digits = 0;
        int scale = exponent;
        bool fraction = false;
        for (; at < field.Length; at++)
        {
            uint digit = unchecked((uint)field[at] - '0');
            if (digit <= 9)
            {
                digits++;
                mantissa = unchecked((mantissa * 10) + digit);
                scale -= fraction ? 1 : 0;
            }
            else if (field[at] == decimalMark && !fraction)
            {
                fraction = true;
            }
            else
            {
                break;
            }
        }

        if (digits == 0 || field.Length > LongestText || !TryExponent(field[at..], ref scale))
        {
            return false;
        }

        if (digits > 19 || mantissa > ExactMantissa || scale is < -22 or > 22)
        {
            return Slow(field[..at], decimalMark, scale, out value);
        }

        double size = scale < 0 ? mantissa / PowersOfTen[-scale] : mantissa * PowersOfTen[scale];
        value = field[0] == (byte)'-' ? -size : size;
        return true;
    }

    private static bool TryExponent(ReadOnlySpan<byte> rest, ref int scale)
    {
        if (rest.IsEmpty)
        {
            return true;
        }

        int at = rest.Length > 1 && rest[1] is (byte)'-' or (byte)'+' ? 2 : 1;
        if (rest[0] is not ((byte)'e' or (byte)'E') || at == rest.Length || rest.Length - at > 4)
        {
            return false;
        }

        int power = 0;
        foreach (byte c in rest[at..])
        {
            if (c is < (byte)'0' or > (byte)'9')
            {
                return false;
            }

            power = (power * 10) + (c - '0');
        }

        scale += rest[1] == (byte)'-' ? -power : power;
        return true;
    }

    // The digits without their mark, and the power of ten that the mark and the exponent came to.
    private static bool Slow(ReadOnlySpan<byte> digits, byte decimalMark, int scale, out double value)
    {
        var text = new StringBuilder(digits.Length + 8);
        foreach (byte c in digits)
        {
            if (c != decimalMark)
            {
                text.Append((char)c);
            }
        }

        text.Append('e').Append(scale.ToString(CultureInfo.InvariantCulture));
        return double.TryParse(text.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
    }
}
