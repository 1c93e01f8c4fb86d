namespace SweepStats.Statistics;

/// <summary>How many independent columns the columns of rows are worth, neighbours going together.</summary>
/// <remarks>
/// κ = (tr Γ)²/tr Γ², Γ the covariance of the columns of one row. tr Γ² is taken twice, and the larger counts. First from how
/// columns go together that stand l apart, Γ = σ_f·σ_(f+l)·ρ_l with σ² smoothed over 16 neighbours to either side: precise from
/// two rows on, but blind to a pattern that is the same in every row, or strong in one place. What chance adds to ρ_l² is taken
/// off. Then from the cosines between rows, which suppose nothing about Γ, and scatter by a factor of two and more where rows are
/// few. Half a column is taken off: of one pattern and a little else, squares have a fatter tail than κ tells.
/// Assumes independent rows. Dimensionless, at least 1.
/// </remarks>
internal static class IndependentColumns
{
    private const int Neighbours = 16;

    private const double OfOnePattern = 0.5;

    // Further columns would only cost: of more independent ones the test would gain nothing that a finding needs.
    private const int MostColumns = 512;

    /// <summary>Independent columns of each group of rows; the cosines are pooled over all of them.</summary>
    public static double[] Of(IReadOnlyList<SerialRows> groups)
    {
        PairSum[] cosines = [.. groups.Select(rows => rows.SquaredCosines())];
        int pairs = cosines.Sum(c => c.Pairs);
        double byRows = pairs > 0 ? cosines.Sum(c => c.Sum) / pairs : 0;
        return [.. groups.Select(rows => Math.Max(1, (1 / Math.Max(byRows, rows.AlongColumns)) - OfOnePattern))];
    }

    /// <summary>1/κ by how columns go together that stand so far apart.</summary>
    /// <param name="distances">Rows about the mean of each column.</param>
    internal static double AlongColumns(double[][] distances)
    {
        double[][] kept = Kept(distances, ((distances[0].Length - 1) / MostColumns) + 1);
        double[] products = LaggedProducts.Of(kept);
        double[] squares = Smoothed(Squares(kept)), sizes = [.. squares.Select(Math.Sqrt)];
        double trace = squares.Sum(), apart = 0;
        for (int l = 1; l < squares.Length; l++)
        {
            double size = Product(sizes, l), square = Product(squares, l);
            double alike = Math.Clamp(products[l] / size, -1, 1);
            apart += size > 0 ? 2 * square * ((alike * alike) - (square / (size * size) / (distances.Length - 1))) : 0;
        }

        return trace > 0 ? (Product(squares, 0) + Math.Max(0, apart)) / (trace * trace) : 1;
    }

    // The columns 0, step, 2·step …
    private static double[][] Kept(double[][] rows, int step)
    {
        double[][] kept = [.. rows.Select(_ => new double[((rows[0].Length - 1) / step) + 1])];
        for (int j = 0; j < rows.Length; j++)
        {
            for (int f = 0; f < kept[j].Length; f++)
            {
                kept[j][f] = rows[j][f * step];
            }
        }

        return kept;
    }

    private static double[] Squares(double[][] rows)
    {
        var squares = new double[rows[0].Length];
        foreach (double[] row in rows)
        {
            for (int f = 0; f < squares.Length; f++)
            {
                squares[f] += row[f] * row[f];
            }
        }

        return squares;
    }

    private static double Product(double[] values, int apart) => RowProduct.Of(values.AsSpan(apart), values);

    private static double[] Smoothed(double[] values)
    {
        var smooth = new double[values.Length];
        for (int f = 0; f < values.Length; f++)
        {
            int first = Math.Max(0, f - Neighbours), end = Math.Min(values.Length, f + Neighbours + 1);
            double sum = 0;
            for (int i = first; i < end; i++)
            {
                sum += values[i];
            }

            smooth[f] = sum / (end - first);
        }

        return smooth;
    }
}
