using System.Buffers.Text;
using System.Globalization;
using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Points of a line as <c>svg</c> lists them, <c>x,y x,y …</c>, to four decimals at most: the library's own form, straight into
/// bytes.
/// </summary>
internal static class SvgPoints
{
    // Two numbers as large as a double can be, which the library writes digit by digit, and what parts them.
    private const int MostBytes = 700;

    private const string Form = "0.####";
    private const double Units = 10_000;
    private const int Decimals = 4;

    // Within a thousandth of a unit of a tie the product may have been rounded over it; from there on doubles hold no such
    // fraction.
    private const double NearTie = 1e-3;
    private const double Largest = 1e10;

    /// <summary>Appends the points.</summary>
    public static void Append(MemoryStream to, IReadOnlyList<ScreenPoint> points)
    {
        Span<byte> bytes = stackalloc byte[MostBytes];
        for (int i = 0; i < points.Count; i++)
        {
            int length = 0;
            if (i > 0)
            {
                bytes[length++] = (byte)' ';
            }

            length += Coordinate(points[i].X, bytes[length..]);
            bytes[length++] = (byte)',';
            length += Coordinate(points[i].Y, bytes[length..]);
            to.Write(bytes[..length]);
        }
    }

    /// <summary>One coordinate; the bytes it takes.</summary>
    internal static int Coordinate(double value, Span<byte> to)
    {
        double scaled = Math.Abs(value) * Units, whole = Math.Floor(scaled), rest = scaled - whole;
        if (!(scaled < Largest) || Math.Abs(rest - 0.5) < NearTie)
        {
            value.TryFormat(to, out int formatted, Form, CultureInfo.InvariantCulture);
            return formatted;
        }

        long units = (long)whole + (rest > 0.5 ? 1 : 0);
        int length = 0;
        if (double.IsNegative(value))
        {
            to[length++] = (byte)'-';
        }

        Utf8Formatter.TryFormat(units / (long)Units, to[length..], out int digits);
        return length + digits + Fraction((int)(units % (long)Units), to[(length + digits)..]);
    }

    // Without the zeros at its end, and without the point where nothing is left.
    private static int Fraction(int part, Span<byte> to)
    {
        if (part == 0)
        {
            return 0;
        }

        int last = Decimals;
        for (; part % 10 == 0; part /= 10)
        {
            last--;
        }

        to[0] = (byte)'.';
        for (int i = last; i >= 1; i--, part /= 10)
        {
            to[i] = (byte)('0' + (part % 10));
        }

        return last + 1;
    }
}
