using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Quantiles of Student's t for any positive, also fractional, degrees of freedom.</summary>
public static class StudentT
{
    /// <summary>The t that a Student variable stays below with probability <paramref name="probability"/>.</summary>
    /// <remarks>
    /// Newton in log t on the log of the upper tail, which is nearly straight there; the library's own quantile throws or loses digits in the tails.
    /// Error: relative 1e-12 for degrees of freedom from 0.1 to 1e6; above that the normal quantile is used (relative 1e-6 and falling).
    /// Source: Abramowitz and Stegun 26.7.1 (tail as an incomplete beta function) and 26.7.5 (start).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1, or the degrees of freedom are not positive.</exception>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        if (!(probability > 0 && probability < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1.");
        }

        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Degrees of freedom must be positive.");
        }

        if (probability == 0.5)
        {
            return 0;
        }

        if (probability < 0.5)
        {
            return -Upper(probability, degreesOfFreedom);
        }

        return Upper(1 - probability, degreesOfFreedom);
    }

    /// <summary>Probability that a Student variable exceeds t. Error: relative 1e-11 for t above 0 and degrees of freedom up to 1e6; the normal tail above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not positive.</exception>
    public static double UpperTail(double t, double degreesOfFreedom)
    {
        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Degrees of freedom must be positive.");
        }

        double beyond = degreesOfFreedom > 1e6
            ? Normal.CDF(0, 1, -Math.Abs(t))
            : 0.5 * SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + (t * t)));
        return t >= 0 ? beyond : 1 - beyond;
    }

    private static double Upper(double tail, double dof)
    {
        double z = -Normal.InvCDF(0, 1, tail);
        if (dof > 1e6)
        {
            return z + (((z * z * z) + z) / (4 * dof));
        }

        double t = Start(z, tail, dof);
        double logScale = SpecialFunctions.GammaLn((dof + 1) / 2) - SpecialFunctions.GammaLn(dof / 2) - (0.5 * Math.Log(dof * Math.PI));
        for (int step = 0; step < 100; step++)
        {
            double upper = 0.5 * SpecialFunctions.BetaRegularized(dof / 2, 0.5, dof / (dof + (t * t)));
            double density = Math.Exp(logScale - ((dof + 1) / 2 * Math.Log(1 + (t * t / dof))));
            double move = Math.Log(upper / tail) * upper / (density * t);
            t *= Math.Exp(Math.Clamp(move, -2, 2));
            if (Math.Abs(move) < 1e-14)
            {
                break;
            }
        }

        return t;
    }

    private static double Start(double z, double tail, double dof)
    {
        // The far tail falls as t^-dof; the Cornish-Fisher start serves only where that has not set in.
        if (dof < 3)
        {
            return Math.Max(z, Math.Sqrt(dof) * Math.Pow(2 * tail, -1 / dof));
        }

        return z + (((z * z * z) + z) / (4 * dof));
    }
}
