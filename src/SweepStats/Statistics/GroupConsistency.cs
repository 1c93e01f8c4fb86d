using MathNet.Numerics;

namespace SweepStats.Statistics;

/// <summary>
/// Critical values for groups of repeats that are held against each other: is one mean, or one scatter, out of line?
/// </summary>
/// <remarks>
/// Dimensionless. Assumes independent normal values of equal scatter. Source: ISO 5725-2:1994, 7.3 (from memory). Error: 1e-9.
/// For groups of different size: the share S_j/ΣS that one group has of the squared deviations about the group means is
/// Beta(ν_j/2, (Σν − ν_j)/2), as in 't Lam 2009 (from memory).
/// </remarks>
public static class GroupConsistency
{
    /// <summary>
    /// Cochran's C, the largest variance over the sum of all, that is exceeded by chance with at most <paramref name="level"/>.
    /// </summary>
    /// <remarks>Formula: 1/(1 + (p − 1)/F(1 − level/p; n − 1, (p − 1)(n − 1))).</remarks>
    /// <param name="groups">Groups p, at least 2.</param>
    /// <param name="size">Values n in each, at least 2.</param>
    /// <param name="level">Chance of a false alarm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a level that is none.</exception>
    public static double Cochran(int groups, int size, double level)
    {
        RequireGroups(groups, size);
        FiniteValues.RequireLevel(level);
        return Share(size - 1, (groups - 1) * (size - 1), level / groups);
    }

    /// <summary>
    /// Mandel's k, the scatter of a group over the pooled scatter, that one given group exceeds by chance with
    /// <paramref name="level"/>.
    /// </summary>
    /// <remarks>Formula: √(p/(1 + (p − 1)/F(1 − level; n − 1, (p − 1)(n − 1)))).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a level that is none.</exception>
    public static double MandelK(int groups, int size, double level)
    {
        RequireGroups(groups, size);
        return MandelKOfDegrees(size - 1, (groups - 1) * (size - 1), level);
    }

    /// <summary>
    /// Mandel's k that one given group exceeds by chance with <paramref name="level"/>, among groups of whatever size.
    /// </summary>
    /// <remarks>Formula: √(b·Σν/ν_j), b the upper quantile of the share.</remarks>
    /// <param name="own">Degrees of freedom ν_j of the group, at least 1.</param>
    /// <param name="others">Those of all others together, at least 1.</param>
    /// <param name="level">Chance of a false alarm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few degrees of freedom, or a level that is none.</exception>
    public static double MandelKOfDegrees(int own, int others, double level)
    {
        RequireDegrees(own, others);
        FiniteValues.RequireLevel(level);
        return Math.Sqrt(Share(own, others, level) * ((double)own + others) / own);
    }

    /// <summary>Probability that one given group has by chance at least this share of the squares.</summary>
    /// <param name="share">S_j/ΣS, 0 to 1.</param>
    /// <param name="own">Degrees of freedom ν_j of the group, at least 1.</param>
    /// <param name="others">Those of all others together, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few degrees of freedom, or a share that is none.</exception>
    public static double ShareProbability(double share, int own, int others)
    {
        RequireDegrees(own, others);
        if (!(share >= 0 && share <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share is between 0 and 1.");
        }

        return Tail(share, own, others);
    }

    /// <summary>
    /// Mandel's h, the distance of a group's mean from the mean of all over the scatter of the means, that one given group
    /// exceeds with <paramref name="level"/>.
    /// </summary>
    /// <remarks>Formula: (p − 1)·t/√(p(t² + p − 2)), t the two-sided quantile with p − 2 degrees of freedom.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three groups, or a level that is none.</exception>
    public static double MandelH(int groups, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 3);
        FiniteValues.RequireLevel(level);
        double t = StudentT.Quantile(1 - (level / 2), groups - 2);
        return (groups - 1) * t / Math.Sqrt(groups * ((t * t) + groups - 2));
    }

    // The share that one group has of the squares is a beta variable, which needs no quantile of F.
    private static double Share(int own, int others, double tail)
    {
        double low = 0, high = 1;
        while (high - low > 1e-15)
        {
            double middle = (low + high) / 2;
            (low, high) = Tail(middle, own, others) > tail ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    // The upper tail as the lower one of the others' share, without a subtraction that would lose its digits.
    private static double Tail(double share, int own, int others) =>
        SpecialFunctions.BetaRegularized(others / 2.0, own / 2.0, 1 - share);

    private static void RequireGroups(int groups, int size)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 2);
    }

    private static void RequireDegrees(int own, int others)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(own, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(others, 1);
    }
}
