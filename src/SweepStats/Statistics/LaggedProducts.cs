using System.Numerics;
using System.Runtime.Intrinsics;

namespace SweepStats.Statistics;

/// <summary>
/// Sums of products of numbers in a row with those so many places before them, over some rows, for every distance at once.
/// </summary>
/// <remarks>
/// The power spectrum says them all: the transform of |X(k)|² is n times the sums round a circle, and as many zeros behind a row
/// keep its ends apart. Two rows go together as real and imaginary part; what they have in common comes out imaginary, and is
/// left. Squared unit of the values. Error: some 1e-15 of the sum of all squares. Source: Wiener 1930, Acta Mathematica 55, 117
/// (from memory).
/// </remarks>
internal static class LaggedProducts
{
    private const int Together = 4;

    /// <summary>
    /// The sums by distance: of the numbers with themselves first, then with those one place before, and so on.
    /// </summary>
    /// <param name="rows">Rows of the same length, at least one number in each.</param>
    public static double[] Of(double[][] rows)
    {
        int columns = rows[0].Length;
        var transform = new FourierTransform((int)BitOperations.RoundUpToPowerOf2((uint)(2 * columns)));
        Vector128<double>[] power = new Vector128<double>[transform.Count], real = new Vector128<double>[transform.Count],
            imaginary = new Vector128<double>[transform.Count];
        for (int first = 0; first < rows.Length; first += Together)
        {
            ReadOnlySpan<double> Row(int j) => first + j < rows.Length ? rows[first + j] : default;
            Put(Row(0), Row(1), real);
            Put(Row(2), Row(3), imaginary);
            transform.Apply(real, imaginary);
            for (int k = 0; k < power.Length; k++)
            {
                power[k] += (real[k] * real[k]) + (imaginary[k] * imaginary[k]);
            }
        }

        Array.Clear(imaginary);
        transform.Apply(power, imaginary);
        var products = new double[columns];
        for (int l = 0; l < products.Length; l++)
        {
            products[l] = Vector128.Sum(power[l]) / transform.Count;
        }

        return products;
    }

    // Two rows beside each other; one that is not there is all zeros, and so is what stands behind them.
    private static void Put(ReadOnlySpan<double> left, ReadOnlySpan<double> right, Vector128<double>[] parts)
    {
        Array.Clear(parts);
        for (int f = 0; f < left.Length; f++)
        {
            parts[f] = Vector128.Create(left[f], right.IsEmpty ? 0 : right[f]);
        }
    }
}
