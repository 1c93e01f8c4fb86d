using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SweepStats.Statistics;

/// <summary>Sum of the products of two rows, for rows that many repeats have.</summary>
/// <remarks>
/// Plain sums, four beside each other on every machine, so that none has other digits. Error: some n/4 units in the last place at
/// most; where more is needed there is <see cref="Deviations.Product"/>. Unit: that of the one times that of the other.
/// </remarks>
internal static class RowProduct
{
    /// <summary>The sum over the numbers of the first row.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The other row is shorter.</exception>
    public static double Of(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        b = b[..a.Length];
        ReadOnlySpan<Vector128<double>> twosOfA = MemoryMarshal.Cast<double, Vector128<double>>(a);
        ReadOnlySpan<Vector128<double>> twosOfB = MemoryMarshal.Cast<double, Vector128<double>>(b);
        Vector128<double> even = Vector128<double>.Zero, odd = Vector128<double>.Zero;
        for (int i = 0; i + 1 < twosOfA.Length; i += 2)
        {
            even += twosOfA[i] * twosOfB[i];
            odd += twosOfA[i + 1] * twosOfB[i + 1];
        }

        double sum = Vector128.Sum(even + odd);
        for (int f = a.Length / 4 * 4; f < a.Length; f++)
        {
            sum += a[f] * b[f];
        }

        return sum;
    }
}
