using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>Mean and scatter of each column of some rows, many columns beside each other. Immutable.</summary>
/// <remarks>
/// Each column has the bits that <see cref="Sample"/> and <see cref="Deviations"/> have for it alone. Unit of the values.
/// </remarks>
/// <param name="Means">Mean of each column.</param>
/// <param name="SquaredDeviations">Sum of the squared distances from it.</param>
internal sealed record ColumnScatter(double[] Means, double[] SquaredDeviations)
{
    /// <summary>Of rows of the same length, at least one.</summary>
    public static ColumnScatter Of(IReadOnlyList<double[]> rows)
    {
        int columns = rows[0].Length;
        var found = new ColumnScatter(new double[columns], new double[columns]);
        var here = new Vector<double>[rows.Count];
        for (int column = 0; column < columns; column += Vector<double>.Count)
        {
            Take(rows, column, here);
            Vector<double> mean = Mean(here);
            Lanes.Put(mean, found.Means, column);
            Lanes.Put(Squares(here, mean), found.SquaredDeviations, column);
        }

        return found;
    }

    /// <summary>Distances of the rows from the mean of each column, as <see cref="Deviations.FromMean"/> has them.</summary>
    public static double[][] Distances(IReadOnlyList<double[]> rows)
    {
        int columns = rows[0].Length;
        double[][] distances = [.. rows.Select(_ => new double[columns])];
        var here = new Vector<double>[rows.Count];
        for (int column = 0; column < columns; column += Vector<double>.Count)
        {
            Take(rows, column, here);
            Less(here, Mean(here));
            Less(here, Mean(here));
            for (int j = 0; j < here.Length; j++)
            {
                Lanes.Put(here[j], distances[j], column);
            }
        }

        return distances;
    }

    private static void Take(IReadOnlyList<double[]> rows, int column, Vector<double>[] here)
    {
        for (int j = 0; j < here.Length; j++)
        {
            here[j] = Lanes.At(rows[j], column);
        }
    }

    private static Vector<double> Mean(Vector<double>[] here)
    {
        var sum = default(CompensatedSums);
        foreach (Vector<double> values in here)
        {
            sum.Add(values);
        }

        return sum.Value / new Vector<double>(here.Length);
    }

    private static void Less(Vector<double>[] here, Vector<double> mean)
    {
        for (int j = 0; j < here.Length; j++)
        {
            here[j] -= mean;
        }
    }

    private static Vector<double> Squares(Vector<double>[] here, Vector<double> mean)
    {
        CompensatedSums squares = default, rest = default;
        foreach (Vector<double> values in here)
        {
            Vector<double> deviation = values - mean;
            squares.Add(deviation * deviation);
            rest.Add(deviation);
        }

        return Vector.Max(Vector<double>.Zero, squares.Value - (rest.Value * rest.Value / new Vector<double>(here.Length)));
    }
}
