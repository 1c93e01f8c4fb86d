using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Quantiles of a nearly normal variable from its skewness and excess.</summary>
public static class CornishFisher
{
    /// <summary>Standardised quantile: z + (z²−1)γ₁/6 + (z³−3z)γ₂/24 − (2z³−5z)γ₁²/36.</summary>
    /// <remarks>
    /// Source: Abramowitz and Stegun 26.2.49. Assumes cumulants that fall with their order, as those of means do.
    /// </remarks>
    public static double Quantile(double probability, double skewness, double excess)
    {
        double z = Normal.InvCDF(0, 1, probability);
        return z + (((z * z) - 1) * skewness / 6) + (((z * z * z) - (3 * z)) * excess / 24)
            - (((2 * z * z * z) - (5 * z)) * skewness * skewness / 36);
    }
}
