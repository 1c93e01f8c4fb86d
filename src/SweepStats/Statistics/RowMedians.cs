using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>The median over rows at each column, many columns beside each other.</summary>
/// <remarks>
/// The same exchanges put any column in order, so as many columns as a register holds go through them together: Batcher's merge exchange.
/// The middle of an even number lies halfway, as that of <see cref="Sample.Median"/>. Unit of the values. Source: Knuth 1998, The Art of Computer
/// Programming 3, algorithm 5.2.2M (from memory).
/// </remarks>
internal sealed class RowMedians
{
    private readonly int _rows;
    private readonly List<Exchange> _exchanges = [];

    /// <param name="rows">How many rows, at least one.</param>
    public RowMedians(int rows)
    {
        _rows = rows;
        int highest = rows < 2 ? 0 : (int)BitOperations.RoundUpToPowerOf2((uint)rows) / 2;
        for (int step = highest; step > 0; step /= 2)
        {
            (int q, int bit, int apart) = (highest, 0, step);
            while (true)
            {
                for (int i = 0; i < rows - apart; i++)
                {
                    if ((i & step) == bit)
                    {
                        _exchanges.Add(new Exchange(i, i + apart));
                    }
                }

                if (q == step)
                {
                    break;
                }

                (apart, q, bit) = (q - step, q / 2, step);
            }
        }
    }

    /// <summary>Median of a column's numbers.</summary>
    /// <param name="row">Each row, of at least as many columns; every number finite.</param>
    /// <param name="columns">How many columns.</param>
    public double[] Of(Func<int, double[]> row, int columns)
    {
        double[][] rows = [.. Enumerable.Range(0, _rows).Select(row)];
        var medians = new double[columns];
        var here = new Vector<double>[_rows];
        int lanes = Vector<double>.Count, column = 0;
        for (; column + lanes <= columns; column += lanes)
        {
            for (int i = 0; i < here.Length; i++)
            {
                here[i] = new Vector<double>(rows[i], column);
            }

            Middle(here).CopyTo(medians, column);
        }

        var single = new double[_rows];
        for (; column < columns; column++)
        {
            for (int i = 0; i < single.Length; i++)
            {
                single[i] = rows[i][column];
            }

            medians[column] = Sample.Median(single);
        }

        return medians;
    }

    private Vector<double> Middle(Vector<double>[] rows)
    {
        foreach (Exchange exchange in _exchanges)
        {
            (Vector<double> a, Vector<double> b) = (rows[exchange.Low], rows[exchange.High]);
            (rows[exchange.Low], rows[exchange.High]) = (Vector.Min(a, b), Vector.Max(a, b));
        }

        // Halfway as Sample has it: low + ½(high − low).
        Vector<double> low = rows[(_rows - 1) / 2], high = rows[_rows / 2];
        return low + (new Vector<double>(0.5) * (high - low));
    }

    private readonly record struct Exchange(int Low, int High);
}
