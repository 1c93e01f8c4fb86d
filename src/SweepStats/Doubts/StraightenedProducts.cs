using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>
/// What rows have in common in windows of columns, the straight line of least squares taken out of each row. Immutable.
/// </summary>
/// <remarks>
/// Sums of products up to each end of a window, of all rows and of two more, all ones and the places: what lies between two ends
/// is a difference of sums, so that windows that overlap cost nothing more. Of what is left once the line over places
/// t = −(m − 1)/2 … is taken out, Σ xy − Σx·Σy/m − Σtx·Σty/(m(m² − 1)/12) is the product. Levels count from each row's first
/// value, so that of equal ones exactly nothing is left. Plain sums: what is asked of them is whether a share is passed. Error:
/// below <see cref="StraightenedWindow.Rounding"/> of a row's squares about its first value, up to some 10 000 columns. Unit:
/// squared one of the values.
/// </remarks>
internal sealed class StraightenedProducts
{
    private readonly int _rows;
    private readonly double _middle;
    private readonly Dictionary<int, double[]> _upTo = [];

    /// <param name="rows">Rows of the same length, at least one.</param>
    /// <param name="windows">The windows that will be asked for.</param>
    public StraightenedProducts(double[][] rows, IEnumerable<Range> windows)
    {
        (_rows, _middle) = (rows.Length, (rows[0].Length - 1) / 2.0);
        HashSet<int> ends = [.. windows.SelectMany(w => new[] { w.Start.Value, w.End.Value })];
        var sums = new CrossProducts(_rows + 2);
        var column = new double[_rows + 2];
        for (int f = 0; f <= rows[0].Length; f++)
        {
            if (ends.Contains(f))
            {
                _upTo.Add(f, sums.Pairs());
            }

            if (f < rows[0].Length)
            {
                Take(rows, f, column);
                sums.Add(column);
            }
        }
    }

    /// <summary>What is left in one of the windows.</summary>
    public StraightenedWindow In(Range window)
    {
        double[] before = _upTo[window.Start.Value], upTo = _upTo[window.End.Value];
        int columns = window.End.Value - window.Start.Value;
        double spread = columns * (((double)columns * columns) - 1) / 12,
            middle = ((window.Start.Value + window.End.Value - 1) / 2.0) - _middle;
        double Between(int place) => upTo[place] - before[place];
        double[] plain = [.. Enumerable.Range(0, _rows).Select(j => Between(CrossProducts.Place(_rows, j)))];
        double[] turned = [.. plain.Select((sum, j) => Between(CrossProducts.Place(_rows + 1, j)) - (middle * sum))];
        var products = new double[_rows * (_rows + 1) / 2];
        for (int i = 0, place = 0; i < _rows; i++)
        {
            for (int j = 0; j <= i; j++, place++)
            {
                products[place] =
                    Between(place) - (plain[i] * plain[j] / columns) - (columns < 2 ? 0 : turned[i] * turned[j] / spread);
            }

            int own = CrossProducts.Place(i, i);
            products[own] = products[own] > StraightenedWindow.Rounding * upTo[own] ? products[own] : 0;
        }

        return new StraightenedWindow(products, _rows, columns);
    }

    private void Take(double[][] rows, int f, double[] column)
    {
        for (int j = 0; j < rows.Length; j++)
        {
            column[j] = rows[j][f] - rows[j][0];
        }

        (column[^2], column[^1]) = (1, f - _middle);
    }
}
