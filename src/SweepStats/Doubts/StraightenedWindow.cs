using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>What rows have in common in a window of columns, straight lines taken out. Immutable.</summary>
/// <remarks>Unit: squared one of the values.</remarks>
internal sealed class StraightenedWindow
{
    /// <summary>A row of which no larger a share of its squares is left runs straight: the rest is rounding.</summary>
    public const double Rounding = 1e-12;

    private readonly double[] _products;
    private readonly int _rows;

    /// <param name="products">Sums of products of every two rows, in the order of <see cref="CrossProducts.Pairs"/>.</param>
    /// <param name="rows">How many rows.</param>
    /// <param name="columns">How many columns.</param>
    public StraightenedWindow(double[] products, int rows, int columns)
    {
        (_products, _rows, Columns) = (products, rows, columns);
        double own = Enumerable.Range(0, rows).Sum(j => products[CrossProducts.Place(j, j)]);
        MeanSquare = own / rows / columns;
        SharedVariance = rows < 2 ? MeanSquare : Math.Max(0, 2 * (products.Sum() - own) / columns / rows / (rows - 1));
    }

    /// <summary>Columns taken.</summary>
    public int Columns { get; }

    /// <summary>Mean square over all rows and columns.</summary>
    public double MeanSquare { get; }

    /// <summary>Mean product of different rows, whose own scatter drops out; not below 0. Of one row its mean square.</summary>
    public double SharedVariance { get; }

    /// <summary>Mean square of a row without what the rows share; not below 0.</summary>
    public double Scatter => Math.Max(0, MeanSquare - SharedVariance);

    /// <summary>How alike every two rows are; two rows at least.</summary>
    public PairwiseCorrelation Correlation() => PairwiseCorrelation.OfProducts(_products, _rows, Columns);
}
