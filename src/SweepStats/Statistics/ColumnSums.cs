using System.Numerics;

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
        for (int column = 0; column < _sums.Length; column += Vector<double>.Count)
        {
            Lanes.Put(Lanes.At(_sums, column) + Lanes.At(row, column), _sums, column);
        }
    }

    /// <summary>Mean of each column over the rows so far, of which there are some.</summary>
    public double[] Means() => Array.ConvertAll(_sums, sum => sum / _rows);
}
