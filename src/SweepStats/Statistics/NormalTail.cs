using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>
/// Logarithm of the normal distribution function, and density over distribution function, to full digits in both tails.
/// </summary>
/// <remarks>
/// Down to −6 by the complementary error function; below by Laplace's continued fraction, where that function runs out of digits
/// and then of numbers. Source: Abramowitz and Stegun 26.2.14. Error: relative 1e-13 (fixtures/oracles/censored.R).
/// </remarks>
internal static class NormalTail
{
    private const double FractionBelow = -6;
    private static readonly double LogRootTwoPi = 0.5 * Math.Log(2 * Math.PI);

    /// <summary>ln Φ(z).</summary>
    public static double LogCdf(double z) => z switch
    {
        < FractionBelow => (-z * z / 2) - LogRootTwoPi - Math.Log(Ratio(z)),
        > 0 => SpecialFunctions.Log1p(-0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2))),
        _ => Math.Log(0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2))),
    };

    /// <summary>φ(z)/Φ(z).</summary>
    public static double Ratio(double z)
    {
        if (z >= FractionBelow)
        {
            return Math.Exp((-z * z / 2) - LogRootTwoPi) / (0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2)));
        }

        double fraction = 0;
        for (int k = 60; k > 0; k--)
        {
            fraction = k / (-z + fraction);
        }

        return -z + fraction;
    }
}
