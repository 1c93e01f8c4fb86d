using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>Constants of control charts for means and standard deviations of groups of n normal values.</summary>
/// <remarks>
/// Dimensionless. Source: definitions in ISO 7870-2:2013 (from memory). Error: relative 1e-9 (fixtures/published/control-charts).
/// </remarks>
public static class ControlLimits
{
    // Standard deviations to the control limits, by custom of the trade.
    private const double Reach = 3;
    private const double Step = 0.01;
    private const double Far = 9;

    /// <summary>c4: expected standard deviation of n values over the true one, √(2/(n − 1))·Γ(n/2)/Γ((n − 1)/2).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values.</exception>
    public static double C4(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        return Math.Sqrt(2.0 / (count - 1))
            * Math.Exp(SpecialFunctions.GammaLn(count / 2.0) - SpecialFunctions.GammaLn((count - 1) / 2.0));
    }

    /// <summary>d2: expected range of n values over their true standard deviation, ∫ 1 − Φⁿ − (1 − Φ)ⁿ.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values.</exception>
    public static double D2(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        double sum = 0;
        for (double x = -Far; x <= Far; x += Step)
        {
            double below = 0.5 * SpecialFunctions.Erfc(-x / Math.Sqrt(2)), above = 0.5 * SpecialFunctions.Erfc(x / Math.Sqrt(2));
            sum += 1 - Math.Pow(below, count) - Math.Pow(above, count);
        }

        return sum * Step;
    }

    /// <summary>A3: mean of all ± A3 times the mean standard deviation are the limits of a group's mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values.</exception>
    public static double A3(int count) => Reach / (C4(count) * Math.Sqrt(count));

    /// <summary>
    /// B3 and B4: times the mean standard deviation they are the limits of a group's standard deviation; the lower is not below
    /// 0.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values.</exception>
    public static (double Low, double High) B(int count)
    {
        double c4 = C4(count), reach = Reach * Math.Sqrt(1 - (c4 * c4)) / c4;
        return (Math.Max(0, 1 - reach), 1 + reach);
    }
}
