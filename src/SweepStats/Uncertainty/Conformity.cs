using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>
/// How probably a measured quantity conforms to its limits, and what a decision rule risks. Source: JCGM 106:2012, clauses 7 to
/// 9.
/// </summary>
/// <remarks>Assumes a normal distribution of the quantity about its estimate; with few degrees of freedom Student's t.</remarks>
public static class Conformity
{
    /// <summary>Probability that the quantity lies within its limits.</summary>
    /// <param name="estimate">Measured value.</param>
    /// <param name="standardUncertainty">Its standard uncertainty, positive, same unit.</param>
    /// <param name="lower">Lower limit; −∞ where there is none.</param>
    /// <param name="upper">Upper limit; +∞ where there is none.</param>
    /// <param name="degreesOfFreedom">Of the standard uncertainty.</param>
    public static double Probability(double estimate, double standardUncertainty, double lower, double upper,
        double degreesOfFreedom = double.PositiveInfinity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(standardUncertainty);
        double below = double.IsNegativeInfinity(lower) ? 0
            : Statistics.StudentT.UpperTail((estimate - lower) / standardUncertainty, degreesOfFreedom);
        double above = double.IsPositiveInfinity(upper) ? 0
            : Statistics.StudentT.UpperTail((upper - estimate) / standardUncertainty, degreesOfFreedom);
        return Math.Max(0, 1 - below - above);
    }

    /// <summary>
    /// Largest chance of accepting an item that does not conform to a single limit, where acceptance begins a guard band away
    /// from it.
    /// </summary>
    /// <param name="guardBand">w, positive towards the safe side, in standard uncertainties.</param>
    public static double LargestSpecificRisk(double guardBand) => Normal.CDF(0, 1, -guardBand);

    /// <summary>
    /// Chances, over a production of known spread and before anything is measured, that an item is accepted wrongly or rejected
    /// wrongly.
    /// </summary>
    /// <param name="mean">Mean of the production.</param>
    /// <param name="deviation">Standard deviation of the production.</param>
    /// <param name="standardUncertainty">Standard uncertainty of the measurement.</param>
    /// <param name="tolerance">Limits within which an item conforms.</param>
    /// <param name="acceptance">Limits within which a measured value is accepted.</param>
    public static (double Consumer, double Producer) GlobalRisks(
        double mean, double deviation, double standardUncertainty, Interval tolerance, Interval acceptance)
    {
        double Accepted(double truth) =>
            Normal.CDF(truth, standardUncertainty, acceptance.High) - Normal.CDF(truth, standardUncertainty, acceptance.Low);
        double Weight(double truth) => Normal.PDF(mean, deviation, truth);
        double far = 8 * deviation;
        double low = Math.Clamp(tolerance.Low, mean - far, mean + far);
        double high = Math.Clamp(tolerance.High, mean - far, mean + far);
        double consumer =
            Over(t => Weight(t) * Accepted(t), mean - far, low) + Over(t => Weight(t) * Accepted(t), high, mean + far);
        return (consumer, Over(t => Weight(t) * (1 - Accepted(t)), low, high));
    }

    private static double Over(Func<double, double> density, double from, double to) =>
        to <= from ? 0 : GaussLegendreRule.Integrate(density, from, to, 256);
}
