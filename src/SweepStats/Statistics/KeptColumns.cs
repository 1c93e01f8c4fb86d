using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>Every so many columns of some rows, the rows beside each other: sums of products of columns, row by row, then over the rows.</summary>
/// <remarks>Each row's sum keeps its order whatever the width of the registers. Squared unit of the values.</remarks>
internal sealed class KeptColumns
{
    private readonly int _rows;
    private readonly int _columns;

    // Registers in a column, filled up with zeros.
    private readonly int _stride;
    private readonly Vector<double>[] _values;

    /// <param name="rows">Rows of the same length.</param>
    /// <param name="step">The columns 0, step, 2·step … are kept.</param>
    public KeptColumns(double[][] rows, int step)
    {
        int lanes = Vector<double>.Count;
        (_rows, _columns, _stride) = (rows.Length, ((rows[0].Length - 1) / step) + 1, (rows.Length + lanes - 1) / lanes);
        _values = new Vector<double>[_columns * _stride];
        Span<double> column = new double[_stride * lanes];
        for (int f = 0; f < _columns; f++)
        {
            for (int j = 0; j < rows.Length; j++)
            {
                column[j] = rows[j][f * step];
            }

            for (int r = 0; r < _stride; r++)
            {
                _values[(f * _stride) + r] = new Vector<double>(column[(r * lanes)..]);
            }
        }
    }

    /// <summary>Sum of the squares over the rows, column by column.</summary>
    public double[] Squares()
    {
        var squares = new double[_columns];
        for (int f = 0; f < squares.Length; f++)
        {
            ReadOnlySpan<Vector<double>> own = _values.AsSpan(f * _stride, _stride);
            for (int j = 0; j < _rows; j++)
            {
                double value = own[j / Vector<double>.Count][j % Vector<double>.Count];
                squares[f] += value * value;
            }
        }

        return squares;
    }

    /// <summary>Sum over the rows of the products of all columns with those so many places before them.</summary>
    /// <param name="apart">Fewer than the columns.</param>
    public double Products(int apart)
    {
        Span<Vector<double>> sums = new Vector<double>[_stride];
        ReadOnlySpan<Vector<double>> before = _values.AsSpan(0, _values.Length - (apart * _stride)), own = _values.AsSpan(apart * _stride);
        for (int i = 0; i < own.Length; i += _stride)
        {
            for (int r = 0; r < sums.Length; r++)
            {
                sums[r] += before[i + r] * own[i + r];
            }
        }

        double sum = 0;
        for (int j = 0; j < _rows; j++)
        {
            sum += sums[j / Vector<double>.Count][j % Vector<double>.Count];
        }

        return sum;
    }
}
