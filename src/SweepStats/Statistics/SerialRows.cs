namespace SweepStats.Statistics;

/// <summary>
/// Rows in the order taken, each column about its own mean: how the rows' distances from the mean go together. Immutable.
/// </summary>
/// <remarks>Unit: the squared one of the values. A row is one repeat, a column one frequency.</remarks>
internal sealed class SerialRows
{
    private readonly double[,] _modes;

    /// <param name="rows">At least two rows of the same length, in the order taken.</param>
    /// <exception cref="ArgumentException">Fewer than two rows, none with a column, different lengths, or a value that is not
    /// finite.</exception>
    public SerialRows(IReadOnlyList<double[]> rows)
    {
        if (rows.Count < 2)
        {
            throw new ArgumentException("At least two rows are needed.", nameof(rows));
        }

        FiniteValues.RequireRows(rows, 1);
        double[][] distances = ColumnScatter.Distances(rows);
        Products = MeanProducts(distances);
        AlongColumns = IndependentColumns.AlongColumns(distances);
        _modes = CosineModes.Products(Products);
        ModePowers = [.. Enumerable.Range(0, rows.Count - 1).Select(k => Math.Max(0, _modes[k, k]))];
    }

    /// <summary>How many rows.</summary>
    public int Count => Products.GetLength(0);

    /// <summary>Products of every two rows, averaged over the columns.</summary>
    public double[,] Products { get; }

    /// <summary>
    /// Power of each cosine mode over the order, slowest first, averaged over the columns: of independent rows all are alike.
    /// </summary>
    public double[] ModePowers { get; }

    /// <summary>Mean power of a mode: the sample variance, averaged over the columns.</summary>
    public double Variance => ModePowers.Average();

    /// <summary>Whether anything scatters.</summary>
    public bool Scatters => Variance > 0;

    /// <summary>Share of the scatter that columns have in common by how those so far apart go together.</summary>
    internal double AlongColumns { get; }

    /// <summary>
    /// Sum over all pairs of modes of the squared cosine between their rows, and how many pairs: of m independent columns it is
    /// 1/m on average.
    /// </summary>
    public PairSum SquaredCosines()
    {
        double sum = 0;
        int pairs = 0;
        for (int k = 0; k < ModePowers.Length; k++)
        {
            for (int l = 0; l < k; l++)
            {
                double lengths = ModePowers[k] * ModePowers[l];
                sum += lengths > 0 ? _modes[k, l] * _modes[k, l] / lengths : 1;
                pairs++;
            }
        }

        return new PairSum(sum, pairs);
    }

    private static double[,] MeanProducts(double[][] distances)
    {
        var sums = new CrossProducts(distances.Length);
        Span<double> column = new double[distances.Length];
        for (int f = 0; f < distances[0].Length; f++)
        {
            for (int j = 0; j < column.Length; j++)
            {
                column[j] = distances[j][f];
            }

            sums.Add(column);
        }

        double[] pairs = sums.Pairs();
        var products = new double[distances.Length, distances.Length];
        for (int i = 0; i < distances.Length; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                products[i, j] = products[j, i] = pairs[CrossProducts.Place(i, j)] / distances[0].Length;
            }
        }

        return products;
    }
}

/// <summary>A sum over pairs.</summary>
/// <param name="Sum">The sum.</param>
/// <param name="Pairs">How many pairs.</param>
internal readonly record struct PairSum(double Sum, int Pairs);
