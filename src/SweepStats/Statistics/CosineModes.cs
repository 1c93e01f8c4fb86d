namespace SweepStats.Statistics;

/// <summary>
/// Values in order taken apart into cosines over their places: slow changes apart from quick ones, the mean apart from both.
/// </summary>
/// <remarks>
/// Mode k of n has the weights √(2/n)·cos(πk(i + ½)/n), k from 1 to n − 1; they are orthonormal and sum to 0. The square of a
/// mode is its power. Of independent values of one variance all modes are independent and of that variance.
/// </remarks>
internal static class CosineModes
{
    /// <summary>Weights of the values in each mode, slowest first.</summary>
    /// <param name="count">n, at least 2.</param>
    public static double[][] Weights(int count) =>
    [
        .. Enumerable.Range(1, count - 1).Select(k =>
            Enumerable.Range(0, count).Select(i => Math.Sqrt(2.0 / count) * Math.Cos(Math.PI * k * (i + 0.5) / count)).ToArray()),
    ];

    /// <summary>Products of modes from products of the values, one row a mode.</summary>
    /// <param name="products">n × n sums of products of values.</param>
    public static double[,] Products(double[,] products)
    {
        int count = products.GetLength(0);
        double[][] weights = Weights(count);
        var modes = new double[count - 1, count - 1];
        for (int k = 0; k < count - 1; k++)
        {
            var half = new double[count];
            for (int i = 0; i < count; i++)
            {
                for (int j = 0; j < count; j++)
                {
                    half[j] += weights[k][i] * products[i, j];
                }
            }

            for (int l = 0; l <= k; l++)
            {
                double sum = 0;
                for (int j = 0; j < count; j++)
                {
                    sum += half[j] * weights[l][j];
                }

                modes[k, l] = modes[l, k] = sum;
            }
        }

        return modes;
    }
}
