using MathNet.Numerics.RootFinding;

namespace SweepStats.Statistics;

/// <summary>
/// Several means held against one (Dunnett's one-sided comparison): the largest of Student variables that share that mean and the
/// scatter.
/// </summary>
/// <remarks>
/// T_j = (λ_j·Z₀ + √(1 − λ_j²)·Z_j)/S, all Z independent standard normal, S² a chi-square variable over its degrees of freedom,
/// common to all; two of them correlate by λ_j·λ_l. Mean 0 against mean j with standard errors u₀ and u_j has
/// λ_j = u₀/√(u₀² + u_j²); equal errors give √½. Given Z₀ and S the T_j are independent, so P(all ≤ t) is a double integral of
/// a product: over ln S by the trapezoid rule, over Z₀ by <see cref="SharedLoadings"/>. Infinite degrees of freedom give the
/// normal maximum; a loading of 1 is Z₀ itself. Dimensionless. Source: Dunnett 1955, Journal of the American Statistical
/// Association 50, 1096; the product form, Dunnett and Sobel 1955, Biometrika 42, 258 (from memory). Error: absolute 1e-9 for
/// up to 500 loadings (fixtures/oracles/many-to-one.R).
/// </remarks>
public static class ManyToOne
{
    private const double LowestDegreesOfFreedom = 1;

    /// <summary>Probability that the largest T_j exceeds t.</summary>
    /// <param name="t">Finite.</param>
    /// <param name="loadings">λ_j, one for each mean held against the one; between 0 and 1.</param>
    /// <param name="degreesOfFreedom">Of the common scatter, from 1 on, also fractional or infinite.</param>
    /// <exception cref="ArgumentException">No loadings, or one that is not between 0 and 1.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom below 1, or a t that is not finite.</exception>
    public static double UpperTail(double t, ReadOnlySpan<double> loadings, double degreesOfFreedom)
    {
        if (!double.IsFinite(t))
        {
            throw new ArgumentOutOfRangeException(nameof(t), t, "A finite number is needed.");
        }

        RequireDegrees(degreesOfFreedom);
        return Tail(t, new SharedLoadings(loadings), degreesOfFreedom);
    }

    /// <summary>The t that the largest T_j stays below with a probability.</summary>
    /// <remarks>
    /// Between Student's own quantile, below which no maximum can have it, and Bonferroni's. Brent's method on the log of the
    /// tail, which is nearly straight. Error: the probability of <see cref="UpperTail"/>.
    /// </remarks>
    /// <param name="probability">Between 0 and 1, for example 0.95.</param>
    /// <param name="loadings">As for the tail.</param>
    /// <param name="degreesOfFreedom">As for the tail.</param>
    /// <exception cref="ArgumentException">No loadings, or one that is not between 0 and 1.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The probability is not between 0 and 1, or degrees of freedom below 1.
    /// </exception>
    public static double Quantile(double probability, ReadOnlySpan<double> loadings, double degreesOfFreedom)
    {
        RequireDegrees(degreesOfFreedom);
        var shared = new SharedLoadings(loadings);
        double tail = 1 - probability;
        double low = StudentT.Quantile(probability, degreesOfFreedom);
        double high = -StudentT.Quantile(tail / shared.Count, degreesOfFreedom);
        // One mean alone leaves no room between the two; rounding must not shut the root out.
        double room = 1e-6 * (1 + Math.Abs(low));
        return Brent.FindRoot(t => Math.Log(Math.Max(double.Epsilon, Tail(t, shared, degreesOfFreedom)) / tail), low - room,
            high + room, 1e-10, 100);
    }

    private static double Tail(double t, SharedLoadings shared, double dof)
    {
        if (double.IsPositiveInfinity(dof))
        {
            return 1 - shared.AllBelow(t);
        }

        (double first, double last, double step) = Nodes(shared.Count, dof);
        double total = 0, below = 0;
        for (double v = first; v <= last; v += step)
        {
            double weight = Math.Exp(dof * (v - (Exponential.MinusOne(2 * v) / 2)));
            total += weight;
            below += weight * shared.AllBelow(t * Math.Exp(v));
        }

        return Math.Clamp(1 - (below / total), 0, 1);
    }

    private static (double First, double Last, double Step) Nodes(int count, double dof)
    {
        // The density of ln S falls to e^-24 of its height at the ends: s^ν on the left for few degrees of freedom, a bell of
        // width 1/√(2ν) for many.
        const double reach = 24;
        double first = -Math.Max(Math.Sqrt(reach / dof) * 1.3, reach / dof) - (0.5 * Math.Min(1, 1 / Math.Sqrt(dof)));
        double last = Math.Min(Math.Sqrt(reach / dof), 0.5 * Math.Log(1 + (2 * reach / dof)) + 0.5);
        // Below the width of the bell, and of the rise of the maximum of so many: the rule's error falls as
        // e^(−2π²·(width/step)²).
        return (first, last, 1 / ((0.9 * Math.Sqrt(2 * dof)) + 3 + (1.5 * Math.Log(count))));
    }

    private static void RequireDegrees(double degreesOfFreedom)
    {
        if (!(degreesOfFreedom >= LowestDegreesOfFreedom))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom,
                "At least one degree of freedom is needed.");
        }
    }
}
