using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>Sums of the products of every two rows, taken in column after column.</summary>
/// <remarks>
/// Plain sums, each in the order of the columns whatever the width of the registers. A column is one number of each row: all
/// products of it are added at once, so that no sum waits for its own last addition. Squared unit of the values. For one thread.
/// </remarks>
internal sealed class CrossProducts
{
    private readonly int _rows;

    // Registers in a column, filled up with zeros; and of each row those up to its own place, row after row.
    private readonly Vector<double>[] _column;
    private readonly Vector<double>[] _sums;

    /// <param name="rows">How many rows.</param>
    public CrossProducts(int rows)
    {
        int lanes = Vector<double>.Count;
        (_rows, _column) = (rows, new Vector<double>[(rows + lanes - 1) / lanes]);
        _sums = new Vector<double>[rows * _column.Length];
    }

    /// <summary>Takes a column in.</summary>
    /// <param name="column">One number of each row.</param>
    public void Add(ReadOnlySpan<double> column)
    {
        Span<Vector<double>> own = _column;
        column[.._rows].CopyTo(System.Runtime.InteropServices.MemoryMarshal.Cast<Vector<double>, double>(own));
        for (int i = 0; i < _rows; i++)
        {
            Vector<double> value = new(column[i]);
            Span<Vector<double>> sums = _sums.AsSpan(i * own.Length, (i / Vector<double>.Count) + 1);
            for (int r = 0; r < sums.Length; r++)
            {
                sums[r] += value * own[r];
            }
        }
    }

    /// <summary>The sums so far: of the first row with itself, of the second with the first and with itself, and so on.</summary>
    public double[] Pairs()
    {
        var pairs = new double[_rows * (_rows + 1) / 2];
        for (int i = 0, next = 0; i < _rows; i++)
        {
            for (int j = 0; j <= i; j++, next++)
            {
                pairs[next] = _sums[(i * _column.Length) + (j / Vector<double>.Count)][j % Vector<double>.Count];
            }
        }

        return pairs;
    }

    /// <summary>Where the sum of two rows stands among the pairs.</summary>
    /// <param name="row">The later of them, or the same.</param>
    /// <param name="earlier">The earlier.</param>
    public static int Place(int row, int earlier) => (row * (row + 1) / 2) + earlier;
}
