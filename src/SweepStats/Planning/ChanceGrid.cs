using SweepStats.Statistics;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Planning;

/// <summary>Evenly spread draws of chance: the same in every run, without a random source.</summary>
/// <remarks>
/// Halton's sequence, one prime a dimension. Shares counted over 1 000 points in up to six dimensions are right to about 0.01.
/// Source: Halton 1960, Numerische Mathematik 2, 84 (from memory).
/// </remarks>
internal static class ChanceGrid
{
    public const int Points = 1000;

    private static readonly int[] Primes = [2, 3, 5, 7, 11, 13];

    /// <summary>Probabilities of one dimension, strictly between 0 and 1.</summary>
    public static double[] Probabilities(int dimension) => [.. Enumerable.Range(1, Points).Select(i => Inverse(i, Primes[dimension]))];

    /// <summary>Standard normal draws.</summary>
    public static double[] Normals(int dimension) => [.. Probabilities(dimension).Select(p => Normal.InvCDF(0, 1, p))];

    /// <summary>Draws of a sample variance over its true value: χ² over its degrees of freedom.</summary>
    public static double[] VarianceRatios(int dimension, int degreesOfFreedom)
    {
        double shape = degreesOfFreedom / 2.0;
        return [.. Probabilities(dimension).Select(p => GammaDistribution.Quantile(shape, p) / shape)];
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
