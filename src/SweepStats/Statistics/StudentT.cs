using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Quantiles of Student's t for any positive, also fractional, degrees of freedom.</summary>
public static class StudentT
{
    /// <summary>The t that a Student variable stays below with probability <paramref name="probability"/>.</summary>
    /// <remarks>
    /// Newton in log t on the log of the upper tail, which is nearly straight there; the library's own quantile throws or loses
    /// digits in the tails. From 1 000 degrees of freedom on, the expansion about the normal quantile takes over except in the
    /// far tail: the library's incomplete beta function loses digits there (1e-9 at 1e6). Error: relative 1e-12 for any degrees
    /// of freedom from 0.5, 1e-11 in the far tail (fixtures/oracles/quantiles.R). Source: Abramowitz and Stegun 26.7.1 (tail as
    /// an incomplete beta function) and 26.7.5 (expansion).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The probability is not between 0 and 1, or the degrees of freedom are not positive.
    /// </exception>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        if (!(probability > 0 && probability < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1.");
        }

        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom,
                "Degrees of freedom must be positive.");
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

    /// <summary>Probability that a Student variable exceeds t.</summary>
    /// <remarks>
    /// Error: relative 1e-11 down to tails of 1e-8 for any degrees of freedom from 0.5 (fixtures/oracles/quantiles.R); further
    /// out the digits fall with the degrees of freedom, and above 1e8 of them the normal tail is given. Source: Abramowitz and
    /// Stegun 26.7.1; Fisher's expansion about the normal (from memory).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not positive.</exception>
    public static double UpperTail(double t, double degreesOfFreedom)
    {
        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom,
                "Degrees of freedom must be positive.");
        }

        double beyond = Beyond(Math.Abs(t), degreesOfFreedom);
        return t >= 0 ? beyond : 1 - beyond;
    }

    private static double Beyond(double t, double dof)
    {
        double w = t * t;
        if (dof >= 1000 && w * w < dof / 100)
        {
            double first = (w + 1) / 4;
            double second = ((((((3 * w) - 7) * w) - 5) * w) - 3) / 96;
            double third = (((((((((w - 11) * w) + 14) * w) + 6) * w) - 3) * w) - 15) / 384;
            return Normal.CDF(0, 1, -t) + (Normal.PDF(0, 1, t) * t * ((first + ((second + (third / dof)) / dof)) / dof));
        }

        return dof > 1e8 ? Normal.CDF(0, 1, -t) : 0.5 * SpecialFunctions.BetaRegularized(dof / 2, 0.5, dof / (dof + w));
    }

    private static double Upper(double tail, double dof)
    {
        double z = -Normal.InvCDF(0, 1, tail);
        // What the expansion leaves out is below 1e-4·(z²/ν)⁵ of it; where the degrees of freedom are infinite it is the normal
        // quantile.
        if (dof >= 1000 && z * z < dof / 100)
        {
            return Expansion(z, dof);
        }

        double t = Start(z, tail, dof);
        double logScale =
            SpecialFunctions.GammaLn((dof + 1) / 2) - SpecialFunctions.GammaLn(dof / 2) - (0.5 * Math.Log(dof * Math.PI));
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

    private static double Expansion(double z, double dof)
    {
        double w = z * z;
        double first = (w + 1) / 4;
        double second = ((((5 * w) + 16) * w) + 3) / 96;
        double third = ((((((3 * w) + 19) * w) + 17) * w) - 15) / 384;
        double fourth = ((((((((79 * w) + 776) * w) + 1482) * w) - 1920) * w) - 945) / 92160;
        return z * (1 + ((first + ((second + ((third + (fourth / dof)) / dof)) / dof)) / dof));
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
