namespace SweepStats.Statistics;

/// <summary>
/// Rows in the order taken, each column about its own mean: how the rows' distances from the mean go together. Immutable.
/// </summary>
/// <remarks>Unit: the squared one of the values. A row is one repeat, a column one frequency.</remarks>
internal sealed class SerialRows
{
    private readonly double[,] _modes;
    private readonly Lazy<double> _alongColumns;

    /// <param name="rows">At least two rows of the same length, in the order taken.</param>
    /// <exception cref="ArgumentException">Fewer than two rows, none with a column, different lengths, or a value that is not
    /// finite.</exception>
    public SerialRows(IReadOnlyList<double[]> rows)
    {
        if (rows.Count < 2)
        {
            throw new ArgumentException("At least two rows are needed.", nameof(rows));
        }

        foreach (double[] row in rows)
        {
            FiniteValues.RequirePairs(rows[0], row, 1);
        }

        Distances = Centred(rows);
        Products = MeanProducts(Distances);
        _modes = CosineModes.Products(Products);
        _alongColumns = new Lazy<double>(() => IndependentColumns.AlongColumns(this));
        ModePowers = [.. Enumerable.Range(0, rows.Count - 1).Select(k => Math.Max(0, _modes[k, k]))];
    }

    /// <summary>How many rows.</summary>
    public int Count => Distances.Length;

    /// <summary>How many columns.</summary>
    public int Columns => Distances[0].Length;

    /// <summary>Distances from the mean of the column.</summary>
    public double[][] Distances { get; }

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

    /// <summary>Share of the scatter that columns have in common by how those so far apart go together, found once.</summary>
    internal double AlongColumns => _alongColumns.Value;

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

    private static double[][] Centred(IReadOnlyList<double[]> rows)
    {
        double[][] distances = [.. rows.Select(_ => new double[rows[0].Length])];
        Span<double> column = new double[rows.Count];
        for (int f = 0; f < rows[0].Length; f++)
        {
            for (int j = 0; j < column.Length; j++)
            {
                column[j] = rows[j][f];
            }

            Deviations.TakeMean(column);
            for (int j = 0; j < column.Length; j++)
            {
                distances[j][f] = column[j];
            }
        }

        return distances;
    }

    private static double[,] MeanProducts(double[][] distances)
    {
        var products = new double[distances.Length, distances.Length];
        for (int i = 0; i < distances.Length; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = 0;
                for (int f = 0; f < distances[i].Length; f++)
                {
                    sum += distances[i][f] * distances[j][f];
                }

                products[i, j] = products[j, i] = sum / distances[i].Length;
            }
        }

        return products;
    }
}

/// <summary>A sum over pairs.</summary>
/// <param name="Sum">The sum.</param>
/// <param name="Pairs">How many pairs.</param>
internal readonly record struct PairSum(double Sum, int Pairs);
