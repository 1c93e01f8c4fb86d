namespace SweepStats.Doubts;

/// <summary>Some columns of several rows, the straight line of least squares taken out of each row.</summary>
/// <remarks>
/// Line over equal steps i = 0 … m − 1: slope Σ(i − ī)y/(m(m² − 1)/12) about the mean. Plain sums: what is asked of them is whether a share is passed,
/// and they are off by 1e-13 of the levels' squares at most.
/// </remarks>
internal sealed class StraightenedRows
{
    /// <param name="rows">Rows of the same length, at least one.</param>
    /// <param name="columns">The columns taken, at least one.</param>
    public StraightenedRows(double[][] rows, Range columns)
    {
        Rows = [.. rows.Select(row => Straightened(row.AsSpan(columns)))];
        MeanSquare = Rows.Sum(SquareSum) / Rows.Length / Columns;
        SharedVariance = Rows.Length < 2 ? MeanSquare : Math.Max(0, BetweenRows());
    }

    /// <summary>What is left of each row about its line.</summary>
    public double[][] Rows { get; }

    /// <summary>Columns taken.</summary>
    public int Columns => Rows[0].Length;

    /// <summary>Mean square over all rows and columns.</summary>
    public double MeanSquare { get; }

    /// <summary>Mean product of different rows, whose own scatter drops out; not below 0. Of one row its mean square.</summary>
    public double SharedVariance { get; }

    // The square of the sum over the rows holds every pair twice, and every row's own square.
    private double BetweenRows()
    {
        var sum = new double[Columns];
        foreach (double[] row in Rows)
        {
            for (int p = 0; p < sum.Length; p++)
            {
                sum[p] += row[p];
            }
        }

        int count = Rows.Length;
        return ((SquareSum(sum) / Columns) - (count * MeanSquare)) / count / (count - 1);
    }

    private static double SquareSum(double[] row)
    {
        double squares = 0;
        foreach (double value in row)
        {
            squares += value * value;
        }

        return squares;
    }

    private static double[] Straightened(ReadOnlySpan<double> row)
    {
        // Counted from the first level, so that of equal levels exactly nothing is left.
        double count = row.Length, middle = (count - 1) / 2, origin = row[0];
        double sum = 0, turned = 0;
        for (int i = 0; i < row.Length; i++)
        {
            double level = row[i] - origin;
            sum += level;
            turned += (i - middle) * level;
        }

        double mean = sum / count, slope = row.Length < 2 ? 0 : turned / (count * ((count * count) - 1) / 12);
        var left = new double[row.Length];
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = row[i] - origin - mean - (slope * (i - middle));
        }

        return left;
    }
}
