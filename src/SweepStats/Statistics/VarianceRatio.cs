using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>Fisher's ratio of two independent mean squares.</summary>
/// <param name="UpperSumOfSquares">Sum of squares above the line, squared unit of the values.</param>
/// <param name="UpperDegreesOfFreedom">Its degrees of freedom.</param>
/// <param name="LowerSumOfSquares">Sum of squares below the line.</param>
/// <param name="LowerDegreesOfFreedom">Its degrees of freedom.</param>
/// <remarks>
/// Assumes normal scatter. Error of the probability: relative 1e-11 (fixtures/published/nist-strd-anova and R).
/// </remarks>
internal readonly record struct VarianceRatio(double UpperSumOfSquares, double UpperDegreesOfFreedom, double LowerSumOfSquares,
    double LowerDegreesOfFreedom)
{
    /// <summary>
    /// The ratio of the mean squares; infinite where only the upper differs from 0, not a number where neither does.
    /// </summary>
    public double F => UpperSumOfSquares / UpperDegreesOfFreedom / (LowerSumOfSquares / LowerDegreesOfFreedom);

    /// <summary>Probability of an F at least as large where both scatter alike. Source: Abramowitz and Stegun 26.6.2.</summary>
    public double Probability
    {
        get
        {
            double lower = LowerSumOfSquares / (LowerSumOfSquares + UpperSumOfSquares);
            return double.IsNaN(lower) ? double.NaN
                : SpecialFunctions.BetaRegularized(LowerDegreesOfFreedom / 2.0, UpperDegreesOfFreedom / 2.0, lower);
        }
    }
}
