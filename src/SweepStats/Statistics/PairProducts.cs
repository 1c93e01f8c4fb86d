using System.Runtime.Intrinsics;

namespace SweepStats.Statistics;

/// <summary>Sums of the products of every pair of rows: the bits of <see cref="Deviations.Product"/>, eight pairs at a time.</summary>
/// <remarks>
/// Each lane adds up its own pair in the order of the columns, so that the width of the machine's registers changes no digit. Twenty rows make 190 pairs
/// a window, and <see cref="CompensatedSum"/> alone waits for each addition before the next.
/// </remarks>
internal sealed class PairProducts
{
    private readonly double[][] _rows;
    private readonly int _stride;

    // Column after column, the rows beside each other, filled up with zeros.
    private readonly double[] _columns;

    /// <param name="rows">Rows of the same length, at least one.</param>
    public PairProducts(double[][] rows)
    {
        _rows = rows;
        int lanes = Vector512<double>.Count;
        _stride = (rows.Length + lanes - 1) / lanes * lanes;
        _columns = new double[_stride * rows[0].Length];
        for (int i = 0; i < rows.Length; i++)
        {
            for (int p = 0; p < rows[i].Length; p++)
            {
                _columns[(p * _stride) + i] = rows[i][p];
            }
        }
    }

    /// <summary>Products of a row with each of those before it.</summary>
    public double[] WithEarlier(int row)
    {
        var products = new double[_stride];
        for (int first = 0; first < row; first += Vector512<double>.Count)
        {
            Products(_rows[row], first).CopyTo(products, first);
        }

        return products[..row];
    }

    private Vector512<double> Products(double[] row, int first)
    {
        Vector512<double> sum = Vector512<double>.Zero, lost = Vector512<double>.Zero;
        for (int p = 0; p < row.Length; p++)
        {
            Vector512<double> value = Vector512.Create(_columns, (p * _stride) + first) * row[p];
            Vector512<double> next = sum + value;
            Vector512<double> taken = next - sum;
            lost += (sum - (next - taken)) + (value - taken);
            sum = next;
        }

        return sum + lost;
    }
}
