namespace SweepStats.Statistics;

/// <summary>Several tests of one question, of which each finds what others miss.</summary>
public static class CombinedTests
{
    /// <summary>Probability that the tests together speak this much where there is nothing: Cauchy's combination.</summary>
    /// <remarks>
    /// Each p-value becomes 1/tan(πp), a Cauchy variable where there is nothing, and their mean is one too, nearly so however the
    /// tests go together: tests that agree cost nothing, and where one alone speaks its p-value counts twice, as Bonferroni's
    /// does. A p-value above 1/2 counts as 1/2, since a test that sees nothing must not outweigh one that does; of independent
    /// tests that takes 5 % to 5.4 %. The result is never below the least p-value. Source: Liu and Xie 2020, Journal of the
    /// American Statistical Association 115, 393 (from memory). Exact up to rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">No p-value, or one that is not between 0 and 1.</exception>
    public static double Probability(ReadOnlySpan<double> probabilities)
    {
        if (probabilities.Length == 0)
        {
            throw new ArgumentException("One p-value at least is needed.", nameof(probabilities));
        }

        double sum = 0, least = 1;
        foreach (double p in probabilities)
        {
            if (!(p is >= 0 and <= 1))
            {
                throw new ArgumentException($"A p-value lies between 0 and 1, not {p}.", nameof(probabilities));
            }

            sum += p < 0.5 ? 1 / Math.Tan(Math.PI * p) : 0;
            least = Math.Min(least, p);
        }

        return Math.Max(least, sum > 0 ? Math.Atan(probabilities.Length / sum) / Math.PI : 0.5);
    }
}
