namespace SweepStats.Statistics;

/// <summary>Values in order taken apart into cosines over their places: slow changes apart from quick ones, the mean apart from both.</summary>
/// <remarks>
/// Mode k of n has the weights √(2/n)·cos(πk(i + ½)/n), k from 1 to n − 1; they are orthonormal and sum to 0. The square of a mode is its power. Of independent
/// values of one variance all modes are independent and of that variance.
/// </remarks>
internal static class CosineModes
{
    /// <summary>Weight of a value in a mode.</summary>
    /// <param name="mode">k, from 1.</param>
    /// <param name="place">i, from 0.</param>
    /// <param name="count">n.</param>
    public static double Weight(int mode, int place, int count) => Math.Sqrt(2.0 / count) * Math.Cos(Math.PI * mode * (place + 0.5) / count);

    /// <summary>Products of modes from products of the values: Z'PZ, one row a mode.</summary>
    /// <param name="products">n × n sums of products of values.</param>
    public static double[,] Products(double[,] products)
    {
        int count = products.GetLength(0);
        var half = new double[count - 1, count];
        var modes = new double[count - 1, count - 1];
        for (int k = 0; k < count - 1; k++)
        {
            for (int i = 0; i < count; i++)
            {
                double weight = Weight(k + 1, i, count);
                for (int j = 0; j < count; j++)
                {
                    half[k, j] += weight * products[i, j];
                }
            }
        }

        for (int k = 0; k < count - 1; k++)
        {
            for (int l = 0; l <= k; l++)
            {
                for (int j = 0; j < count; j++)
                {
                    modes[k, l] += half[k, j] * Weight(l + 1, j, count);
                }

                modes[l, k] = modes[k, l];
            }
        }

        return modes;
    }
}
