using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>
/// The noncentral t variable T = (Z + δ)/S, Z standard normal, S² a chi-square variable over its degrees of freedom.
/// </summary>
/// <remarks>
/// Formula: P(T ≤ t) = ∫ Φ(t·s − δ) f(s) ds, f the density of S. With v = ln s the integrand is analytic round the real line and
/// falls off at both ends, so the trapezoid rule converges geometrically; f is normalised by its own sum, which spares the gamma
/// function and its cancellation. Dimensionless. Degrees of freedom may be fractional, from 1 on; infinity gives the normal
/// distribution. Source: definition in Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2, chapter 31 (from
/// memory). Error: probabilities absolute 1e-14, quantiles and noncentralities relative 1e-12 (fixtures/oracles/quantiles.R);
/// upper tails keep the absolute error.
/// </remarks>
public static class NoncentralT
{
    private const double LowestDegreesOfFreedom = 1;

    // What the sum of a probability rounds to, relative to it: closer to a root no step can come.
    private const double Rounding = 4e-16;

    // The work grows with δ; beyond this the answer is a multiple of a chi variable and nobody's detection limit.
    private const double HighestNoncentrality = 1000;
    private const double HighestCritical = 500;

    /// <summary>P(T ≤ t).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom below 1, or t or δ beyond ±1000.</exception>
    public static double Cdf(double t, double degreesOfFreedom, double noncentrality)
    {
        RequireArguments(degreesOfFreedom, noncentrality);
        RequireFinite(t, nameof(t));
        return At(t, degreesOfFreedom, noncentrality).Probability;
    }

    /// <summary>The t that T stays below with a probability.</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The probability is not between 0 and 1, degrees of freedom below 1, or δ beyond ±1000.
    /// </exception>
    public static double Quantile(double probability, double degreesOfFreedom, double noncentrality)
    {
        RequireProbability(probability, nameof(probability));
        RequireArguments(degreesOfFreedom, noncentrality);
        double start = noncentrality + StudentT.Quantile(probability, degreesOfFreedom);
        return Solve(start, Rounding * probability, t =>
        {
            (double reached, double density, _) = At(t, degreesOfFreedom, noncentrality);
            return new(reached - probability, density);
        });
    }

    /// <summary>
    /// The δ at which T exceeds Student's t at 1 − α with probability 1 − β: the detection limit in standard errors of a single
    /// estimate.
    /// </summary>
    /// <remarks>
    /// Source: Currie 1995, Pure and Applied Chemistry 67, 1699 (IUPAC; from memory): L_D = δ(α, β, ν)·σ₀, close to 2t for α = β.
    /// </remarks>
    /// <param name="falseAlarm">α: probability of claiming a signal where there is none.</param>
    /// <param name="miss">β: probability of missing a signal of the limit's size.</param>
    /// <param name="degreesOfFreedom">Behind the standard error.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A probability is not between 0 and 1, degrees of freedom below 1, or a critical t above 500.
    /// </exception>
    public static double DetectionNoncentrality(double falseAlarm, double miss, double degreesOfFreedom)
    {
        RequireProbability(falseAlarm, nameof(falseAlarm));
        RequireProbability(miss, nameof(miss));
        RequireArguments(degreesOfFreedom, 0);
        double critical = -StudentT.Quantile(falseAlarm, degreesOfFreedom);
        if (Math.Abs(critical) > HighestCritical)
        {
            throw new ArgumentOutOfRangeException(nameof(falseAlarm), falseAlarm,
                "So rare a false alarm cannot be told with so few degrees of freedom.");
        }

        return Solve(critical - Normal.InvCDF(0, 1, miss), Rounding * miss, delta =>
        {
            (double reached, _, double fall) = At(critical, degreesOfFreedom, delta);
            return new(miss - reached, fall);
        });
    }

    /// <summary>Probability, its slope in t and its fall with δ.</summary>
    private static (double Probability, double Density, double Fall) At(double t, double dof, double delta)
    {
        if (double.IsPositiveInfinity(dof))
        {
            double normal = Density(t - delta);
            return (Normal.CDF(0, 1, t - delta), normal, normal);
        }

        (double first, double last, double step) = Nodes(t, dof, delta);
        double total = 0;
        double probability = 0;
        double density = 0;
        double fall = 0;
        for (double v = first; v <= last; v += step)
        {
            double s = Math.Exp(v);
            double weight = Math.Exp(dof * (v - (Exponential.MinusOne(2 * v) / 2)));
            double z = (t * s) - delta;
            double bell = weight * Density(z);
            total += weight;
            probability += weight * Normal.CDF(0, 1, z);
            density += s * bell;
            fall += bell;
        }

        return (probability / total, density / total, fall / total);
    }

    private static (double First, double Last, double Step) Nodes(double t, double dof, double delta)
    {
        // Where the weight has fallen to e^-40: s^ν on the left for few degrees of freedom, a bell of width 1/√(2ν) for many.
        const double reach = 40;
        double first = -Math.Max(Math.Sqrt(reach / dof) * 1.3, reach / dof) - (0.5 * Math.Min(1, 1 / Math.Sqrt(dof)));
        double last = Math.Min(Math.Sqrt(reach / dof), 0.5 * Math.Log(1 + (2 * reach / dof)) + 0.5);
        // The rule's error is exp(−2πθ/h) times what the integrand grows by at the height θ off the real line: (cos 2θ)^(−ν/2)
        // for f, exp(z²θ²/2) for Φ where it turns. The step makes that e^-38; θ may not pass π/4.
        double turn = Math.Min(Math.Abs(t) * Math.Exp(last), Math.Abs(delta) + 9);
        double height = Math.Min(0.6, Math.Sqrt(38 / (dof + (turn * turn / 2))));
        double growth = (turn * turn * height * height / 2) - (dof / 2 * Math.Log(Math.Cos(2 * height)));
        return (first, last, 2 * Math.PI * height / (38 + growth));
    }

    /// <summary>Root of a rising function by Newton inside a bracket that closes at every step.</summary>
    private static double Solve(double start, double resolution, Func<double, Tangent> rising)
    {
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        double reach = 1 + (Math.Abs(start) / 4);
        double x = start;
        for (int step = 0; step < 400; step++)
        {
            (double value, double slope) = rising(x);
            if (Math.Abs(value) <= resolution)
            {
                return x;
            }

            (low, high) = value > 0 ? (low, x) : (x, high);
            double next = x - (value / slope);
            if (Math.Abs(next - x) <= 1e-15 * (1 + Math.Abs(x)))
            {
                return next;
            }

            reach *= 2;
            x = next > low && next < high && Math.Abs(next - x) < reach ? next : Fallback(low, high, reach);
            if (x == low || x == high)
            {
                // Nothing lies between the ends any more: rounding in the probability decides, not the step.
                return x;
            }
        }

        throw new ArithmeticException(
            FormattableString.Invariant($"No root of the noncentral t was found between {low} and {high}."));
    }

    private static double Fallback(double low, double high, double reach)
    {
        if (double.IsInfinity(low))
        {
            return high - reach;
        }

        return double.IsInfinity(high) ? low + reach : (low + high) / 2;
    }

    private static double Density(double z) => Math.Exp(-z * z / 2) * 0.3989422804014326779;

    private static void RequireArguments(double dof, double delta)
    {
        if (!(dof >= LowestDegreesOfFreedom))
        {
            throw new ArgumentOutOfRangeException(nameof(dof), dof, "At least one degree of freedom is needed.");
        }

        if (!(Math.Abs(delta) <= HighestNoncentrality))
        {
            throw new ArgumentOutOfRangeException(nameof(delta), delta, "Noncentralities from -1000 to 1000 are served.");
        }
    }

    private static void RequireFinite(double value, string name)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");
        }
    }

    private static void RequireProbability(double probability, string name)
    {
        if (!(probability > 0 && probability < 1))
        {
            throw new ArgumentOutOfRangeException(name, probability, "A probability lies between 0 and 1.");
        }
    }

    /// <summary>A function at a point, and its slope there.</summary>
    private readonly record struct Tangent(double Value, double Slope);
}
