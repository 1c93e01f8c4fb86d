using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>The digamma function and its derivatives for positive arguments, and the inverse of the first derivative.</summary>
/// <remarks>
/// Source: NIST Digital Library of Mathematical Functions, 5.15.5 (recurrence) and 5.15.8 and 5.15.9 (asymptotic series).
/// </remarks>
public static class GammaFunctions
{
    // Bernoulli numbers B2 to B14 over (2k)!: the coefficients of the asymptotic series.
    private static readonly double[] Series =
    [
        1.0 / 12, -1.0 / 720, 1.0 / 30240, -1.0 / 1209600, 1.0 / 47900160, -691.0 / 1307674368000, 1.0 / 74724249600,
    ];

    /// <summary>ψ(x), the derivative of ln Γ.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is not a positive number.</exception>
    public static double Digamma(double x)
    {
        RequirePositive(x);
        return SpecialFunctions.DiGamma(x);
    }

    /// <summary>
    /// The derivative of ψ of an order: trigamma for 1, tetragamma for 2, pentagamma for 3. Error: relative 1e-14.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The order is not between 1 and 3, or x is not a positive number.</exception>
    public static double Polygamma(int order, double x)
    {
        if (order is < 1 or > 3)
        {
            throw new ArgumentOutOfRangeException(nameof(order), order, "Orders 1 to 3 are offered.");
        }

        RequirePositive(x);
        double factorial = order == 3 ? 6 : order;
        double sum = 0;
        for (; x < 20; x += 1)
        {
            sum += factorial / Math.Pow(x, order + 1);
        }

        double power = Math.Pow(x, -order);
        sum += (factorial / order * power) + (factorial / 2 * power / x);
        double rising = factorial / order;
        for (int k = 1; k <= Series.Length; k++)
        {
            // (2k + order − 1)! grows by the next two factors at each step.
            rising *= ((2 * k) + order - 2) * ((2 * k) + order - 1);
            sum += Series[k - 1] * rising * Math.Pow(x, -(2 * k) - order);
        }

        return order % 2 == 1 ? sum : -sum;
    }

    /// <summary>
    /// The x with ψ₁(x) = <paramref name="value"/>: Newton on 1/ψ₁, which is nearly straight, so it never overshoots.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a positive number.</exception>
    public static double InverseTrigamma(double value)
    {
        RequirePositive(value);
        double x = 0.5 + (1 / value);
        for (int step = 0; step < 60; step++)
        {
            double trigamma = Polygamma(1, x);
            double change = trigamma * (1 - (trigamma / value)) / Polygamma(2, x);
            x += change;
            if (Math.Abs(change) <= 1e-14 * x)
            {
                break;
            }
        }

        return x;
    }

    private static void RequirePositive(double x)
    {
        if (!(x > 0) || double.IsPositiveInfinity(x))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "The argument must be a positive number.");
        }
    }
}
