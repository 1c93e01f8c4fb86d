using System.Numerics;
using System.Runtime.InteropServices;

namespace SweepStats.Statistics;

/// <summary>
/// Plain sums of each column over rows, taken in row after row as they lie in memory. Unit of the values. For one thread.
/// </summary>
/// <param name="columns">How many columns.</param>
internal sealed class ColumnSums(int columns)
{
    private readonly double[] _sums = new double[columns];
    private int _rows;

    /// <summary>Takes a row in.</summary>
    /// <param name="row">One number a column.</param>
    public void Add(ReadOnlySpan<double> row)
    {
        _rows++;
        Span<Vector<double>> sums = MemoryMarshal.Cast<double, Vector<double>>(_sums.AsSpan());
        ReadOnlySpan<Vector<double>> values = MemoryMarshal.Cast<double, Vector<double>>(row);
        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] += values[i];
        }

        for (int column = sums.Length * Vector<double>.Count; column < _sums.Length; column++)
        {
            _sums[column] += row[column];
        }
    }

    /// <summary>Mean of each column over the rows so far, of which there are some.</summary>
    public double[] Means() => Array.ConvertAll(_sums, sum => sum / _rows);
}
