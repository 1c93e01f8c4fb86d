using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>The median over rows at each column, many columns beside each other.</summary>
/// <remarks>
/// The same exchanges put any column in order, so as many columns as a register holds go through them together: Batcher's merge
/// exchange, as far as the middle depends on it. The middle of an even number lies halfway, as that of
/// <see cref="Sample.Median"/>. Unit of the values. Source: Knuth 1998, The Art of Computer Programming 3, algorithm 5.2.2M (from
/// memory).
/// </remarks>
internal sealed class RowMedians
{
    private readonly int _rows;
    private readonly Exchange[] _exchanges;

    /// <param name="rows">How many rows, at least one.</param>
    public RowMedians(int rows) => (_rows, _exchanges) = (rows, ForMiddle([.. InOrder(rows)], rows));

    /// <summary>Median of a column's numbers.</summary>
    /// <param name="row">Each row, of at least as many columns; every number finite.</param>
    /// <param name="columns">How many columns.</param>
    public double[] Of(Func<int, double[]> row, int columns)
    {
        double[][] rows = [.. Enumerable.Range(0, _rows).Select(row)];
        var medians = new double[columns];
        var here = new Vector<double>[_rows];
        for (int column = 0; column < columns; column += Vector<double>.Count)
        {
            for (int i = 0; i < here.Length; i++)
            {
                here[i] = Lanes.At(rows[i], column);
            }

            Lanes.Put(Middle(here), medians, column);
        }

        return medians;
    }

    private static IEnumerable<Exchange> InOrder(int rows)
    {
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
                        yield return new Exchange(i, i + apart);
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

    // From the last one back: an exchange counts where either place has a say in the middle, and then both have.
    private static Exchange[] ForMiddle(Exchange[] all, int rows)
    {
        HashSet<int> asked = [(rows - 1) / 2, rows / 2];
        List<Exchange> counted = [];
        foreach (Exchange exchange in all.Reverse())
        {
            if (asked.Contains(exchange.Low) || asked.Contains(exchange.High))
            {
                asked.UnionWith([exchange.Low, exchange.High]);
                counted.Add(exchange);
            }
        }

        counted.Reverse();
        return [.. counted];
    }

    // Every number is finite, and which of two equal ones is which does not matter: the machine's own comparison is enough.
    private Vector<double> Middle(Vector<double>[] rows)
    {
        foreach (Exchange exchange in _exchanges)
        {
            (Vector<double> a, Vector<double> b) = (rows[exchange.Low], rows[exchange.High]);
            (rows[exchange.Low], rows[exchange.High]) = (Vector.MinNative(a, b), Vector.MaxNative(b, a));
        }

        // Halfway as Sample has it: low + ½(high − low).
        Vector<double> low = rows[(_rows - 1) / 2], high = rows[_rows / 2];
        return low + (new Vector<double>(0.5) * (high - low));
    }

    private readonly record struct Exchange(int Low, int High);
}
