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

    // 1/κ by how columns go together that stand so far apart.
    internal static double AlongColumns(SerialRows rows)
    {
        int step = ((rows.Columns - 1) / MostColumns) + 1;
        var kept = new KeptColumns(rows.Distances, step);
        double[] squares = Smoothed(kept.Squares());
        double[] sizes = [.. squares.Select(Math.Sqrt)];
        double trace = squares.Sum();
        double whole = Product(squares, squares, 0), apart = 0;
        for (int l = 1; l < squares.Length; l++)
        {
            double size = Product(sizes, sizes, l), square = Product(squares, squares, l);
            double alike = Math.Clamp(kept.Products(l) / size, -1, 1);
            apart += size > 0 ? 2 * square * ((alike * alike) - (square / (size * size) / (rows.Count - 1))) : 0;
        }

        return trace > 0 ? (whole + Math.Max(0, apart)) / (trace * trace) : 1;
    }

    private static double Product(double[] a, double[] b, int apart)
    {
        double sum = 0;
        for (int f = apart; f < a.Length; f++)
        {
            sum += a[f - apart] * b[f];
        }

        return sum;
    }

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
