using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Whether several rows share a pattern, or only scatter each for itself.</summary>
/// <remarks>
/// Pearson's coefficient of every pair of rows; each row's own offset drops out. The test averages Fisher's z = artanh r over the
/// N pairs: without a shared pattern the pairs do not correlate with each other, and the mean of z has variance 1/(N(m − 3)) for
/// m independent columns. Assumes rows of roughly normal scatter without shared pattern; a few far-out columns shared by all rows
/// are a pattern. Columns that resemble their neighbours count for fewer: use <see cref="UpperTail"/> with the number of
/// independent ones. The mean leans to the right for many rows (skewness up to √(8/m)): small probabilities are then too small.
/// Measured at 5 %: 5.5 % for 3 rows of 100, 6.3 % for 10 rows of 20 (fixtures/oracles/correlation.R). Source: Fisher 1921,
/// Metron 1, 3 (from memory).
/// </remarks>
internal sealed record PairwiseCorrelation
{
    // A copy has r = 1 and no finite z; it counts as the closest a double comes to 1.
    private const double Closest = 1 - 1.2e-16;

    private PairwiseCorrelation()
    {
    }

    /// <summary>Pairs of rows.</summary>
    public required int Pairs { get; init; }

    /// <summary>Columns of each row.</summary>
    public required int Columns { get; init; }

    /// <summary>Mean coefficient over the pairs, between −1 and 1; not a number where a row has no scatter.</summary>
    public required double Mean { get; init; }

    /// <summary>Mean of Fisher's z over the pairs, dimensionless.</summary>
    public required double FisherMean { get; init; }

    /// <summary>Probability of a mean at least as large without a shared pattern, every column independent.</summary>
    public double Probability => UpperTail(Columns);

    /// <summary>Probability of a mean at least as large without a shared pattern: normal upper tail of z̄·√(N(m − 3)).</summary>
    /// <param name="independentColumns">m, more than 3; may be a fraction.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not more than 3.</exception>
    public double UpperTail(double independentColumns)
    {
        if (!(independentColumns > 3))
        {
            throw new ArgumentOutOfRangeException(nameof(independentColumns), independentColumns,
                "More than three independent columns are needed.");
        }

        return Normal.CDF(0, 1, -FisherMean * Math.Sqrt(Pairs * (independentColumns - 3)));
    }

    /// <summary>Compares every row with every other.</summary>
    /// <param name="rows">At least two rows of the same length.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than two rows, rows of different length or of fewer than four values, or a value that is not finite.
    /// </exception>
    public static PairwiseCorrelation Of(IReadOnlyList<double[]> rows)
    {
        if (rows.Count < 2)
        {
            throw new ArgumentException("At least two rows are needed.", nameof(rows));
        }

        FiniteValues.RequireRows(rows, 4);
        double[][] deviations = [.. rows.Select(row => Deviations.FromMean(row))];
        return OfProducts(
            [.. deviations.SelectMany((row, j) => deviations.Take(j + 1).Select(other => Deviations.Product(row, other)))],
            rows.Count, rows[0].Length);
    }

    /// <summary>The same from what the rows' distances from their means have in common.</summary>
    /// <param name="products">Sums of products of every two rows, in the order of <see cref="CrossProducts.Pairs"/>.</param>
    /// <param name="rows">How many rows, at least two.</param>
    /// <param name="columns">Columns of each row.</param>
    public static PairwiseCorrelation OfProducts(double[] products, int rows, int columns)
    {
        double[] lengths = [.. Enumerable.Range(0, rows).Select(j => Math.Sqrt(products[CrossProducts.Place(j, j)]))];
        var coefficients = new CompensatedSum();
        var scores = new CompensatedSum();
        for (int j = 0; j < rows; j++)
        {
            for (int i = 0; i < j; i++)
            {
                double r = Correlation.Cosine(products[CrossProducts.Place(j, i)], lengths[i] * lengths[j]);
                coefficients.Add(r);
                scores.Add(Math.Atanh(Math.Clamp(r, -Closest, Closest)));
            }
        }

        int pairs = rows * (rows - 1) / 2;
        return new PairwiseCorrelation
        {
            Pairs = pairs,
            Columns = columns,
            Mean = coefficients.Value / pairs,
            FisherMean = scores.Value / pairs,
        };
    }
}
