namespace SweepStats.Statistics;

/// <summary>Whether two means are the same within a margin: "no significant difference" is not "the same".</summary>
/// <remarks>
/// Two one-sided tests by Welch's t: the means are equivalent where both p-values are at most α, which is the same as the
/// interval of level 1 − 2α lying within the margin. Unit of the values. Assumes independent normal values. Source: Schuirmann
/// 1987, Journal of Pharmacokinetics and Biopharmaceutics 15, 657 (from memory).
/// </remarks>
/// <param name="Difference">Mean of the first group less that of the second.</param>
/// <param name="StandardError">Of the difference.</param>
/// <param name="DegreesOfFreedom">After Welch and Satterthwaite.</param>
/// <param name="Margin">Half-width within which means count as the same.</param>
public sealed record Equivalence(double Difference, double StandardError, double DegreesOfFreedom, double Margin)
{
    /// <summary>Probability of data that speak this much against a difference below −margin where it is there.</summary>
    public double ProbabilityOfLess => StudentT.UpperTail((Difference + Margin) / StandardError, DegreesOfFreedom);

    /// <summary>The same for a difference above the margin.</summary>
    public double ProbabilityOfMore => StudentT.UpperTail((Margin - Difference) / StandardError, DegreesOfFreedom);

    /// <summary>The larger of both: at most α shows that the means are the same within the margin.</summary>
    public double Probability => Math.Max(ProbabilityOfLess, ProbabilityOfMore);

    /// <summary>Probability of a difference at least as large, to either side, between means that are alike.</summary>
    public double ProbabilityAlike => Math.Min(1, 2 * StudentT.UpperTail(Math.Abs(Difference) / StandardError, DegreesOfFreedom));

    /// <summary>Interval of the difference that decides at level α: that of confidence 1 − 2α.</summary>
    /// <exception cref="ArgumentOutOfRangeException">α is not between 0 and 1/2.</exception>
    public Interval Interval(double level)
    {
        double reach = StandardError * StudentT.Quantile(1 - level, DegreesOfFreedom);
        return new Interval(Difference - reach, Difference + reach);
    }

    /// <summary>Compares two groups.</summary>
    /// <exception cref="ArgumentException">A group has fewer than two values, or neither scatters.</exception>
    public static Equivalence Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double margin)
    {
        FiniteValues.Require(first, 2, nameof(first));
        FiniteValues.Require(second, 2, nameof(second));
        ReadOnlySpan<Contribution> parts =
        [
            new(Sample.StandardDeviation(first) / Math.Sqrt(first.Length), first.Length - 1),
            new(Sample.StandardDeviation(second) / Math.Sqrt(second.Length), second.Length - 1),
        ];
        double error = WelchSatterthwaite.Combined(parts);
        return error > 0
            ? new Equivalence(Sample.Mean(first) - Sample.Mean(second), error, WelchSatterthwaite.DegreesOfFreedom(parts), margin)
            : throw new ArgumentException("Neither group scatters: nothing tells how far the difference can be trusted.",
                nameof(first));
    }
}
