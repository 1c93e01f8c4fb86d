using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>Critical values for groups of repeats that are held against each other: is one mean, or one scatter, out of line?</summary>
/// <remarks>Dimensionless. Assumes independent normal values and groups of one size. Source: ISO 5725-2:1994, 7.3 (from memory). Error: 1e-9.</remarks>
public static class GroupConsistency
{
    /// <summary>Cochran's C, the largest variance over the sum of all, that is exceeded by chance with at most <paramref name="level"/>.</summary>
    /// <remarks>Formula: 1/(1 + (p − 1)/F(1 − level/p; n − 1, (p − 1)(n − 1))).</remarks>
    /// <param name="groups">Groups p, at least 2.</param>
    /// <param name="size">Values n in each, at least 2.</param>
    /// <param name="level">Chance of a false alarm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a level that is none.</exception>
    public static double Cochran(int groups, int size, double level) => Largest(groups, size, level / groups, level);

    /// <summary>Mandel's k, the scatter of a group over the pooled scatter, that one given group exceeds by chance with <paramref name="level"/>.</summary>
    /// <remarks>Formula: √(p/(1 + (p − 1)/F(1 − level; n − 1, (p − 1)(n − 1)))).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a level that is none.</exception>
    public static double MandelK(int groups, int size, double level) => Math.Sqrt(groups * Largest(groups, size, level, level));

    /// <summary>Mandel's h, the distance of a group's mean from the mean of all over the scatter of the means, that one given group exceeds with <paramref name="level"/>.</summary>
    /// <remarks>Formula: (p − 1)·t/√(p(t² + p − 2)), t the two-sided quantile with p − 2 degrees of freedom.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three groups, or a level that is none.</exception>
    public static double MandelH(int groups, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 3);
        FiniteValues.RequireLevel(level);
        double t = StudentT.Quantile(1 - (level / 2), groups - 2);
        return (groups - 1) * t / Math.Sqrt(groups * ((t * t) + groups - 2));
    }

    // The share that one mean square has of the sum is a beta variable, which needs no quantile of F.
    private static double Largest(int groups, int size, double tail, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 2);
        FiniteValues.RequireLevel(level);
        double own = (size - 1) / 2.0, others = (groups - 1) * own;
        double low = 0, high = 1;
        while (high - low > 1e-15)
        {
            double middle = (low + high) / 2;
            // The upper tail, without a subtraction that would lose its digits.
            (low, high) = SpecialFunctions.BetaRegularized(others, own, 1 - middle) > tail ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
