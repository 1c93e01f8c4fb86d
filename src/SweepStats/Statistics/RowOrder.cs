namespace SweepStats.Statistics;

/// <summary>Rows of one group in some order, for the share of their ratio in a test. For one thread.</summary>
/// <remarks>T = [Σ pᵢ,ᵢ₊₁ + (p₁₁ + p_nn)/2]/Σ pᵢᵢ, p the products of rows in that order: the same as by cosine modes.</remarks>
/// <param name="rows">The rows.</param>
/// <param name="weight">Weight of the group.</param>
internal sealed class RowOrder(SerialRows rows, double weight)
{
    private readonly int[] _order = [.. Enumerable.Range(0, rows.Count)];
    private readonly double[,] _products = rows.Products;
    private readonly double _scale = weight / Enumerable.Range(0, rows.Count).Sum(j => rows.Products[j, j]);

    /// <summary>Weighted ratio in the present order.</summary>
    public double Ratio()
    {
        int first = _order[0], last = _order[^1];
        double sum = (_products[first, first] + _products[last, last]) / 2;
        for (int i = 1; i < _order.Length; i++)
        {
            sum += _products[_order[i - 1], _order[i]];
        }

        return sum * _scale;
    }

    /// <summary>Brings the rows into any order, each as likely.</summary>
    public void Shuffle(RandomSource random)
    {
        for (int i = _order.Length - 1; i > 0; i--)
        {
            int other = (int)(random.Uniform() * (i + 1));
            (_order[i], _order[other]) = (_order[other], _order[i]);
        }
    }
}
