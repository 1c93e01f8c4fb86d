using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Planning;

/// <summary>How wide the interval of SE at one frequency will be, far above the floor.</summary>
/// <remarks>
/// There the interval is Welch's: half-width t(ν)·√(s_c²/n + s_r²/n_r), with ν after Welch and Satterthwaite. Both sample
/// variances are drawn evenly over their χ² distributions, so that the quantiles are those of the half-widths that campaigns will
/// show, not of one at the expected variances: with three placements the middle one is 17 % below that. Assumes normal repeats,
/// independent or going together as the pilot's do. Error: 1 %.
/// </remarks>
public static class HalfWidthForecast
{
    private const int FewPoints = 100;

    /// <summary>Half-width in dB that a share of campaigns stays within; infinite where nothing repeats.</summary>
    /// <param name="basis">What is known of the set-up.</param>
    /// <param name="numbers">Sweeps taken.</param>
    /// <param name="confidence">Two-sided level.</param>
    /// <param name="share">Share of campaigns: 0.5 for the middle one.</param>
    public static double Db(PlanBasis basis, SweepNumbers numbers, Confidence confidence, double share = 0.5)
    {
        ArgumentNullException.ThrowIfNull(basis);
        return numbers.Repeated ? Sample.Quantile(Widths(basis, numbers, confidence, ChanceGrid.Points), share)
            : double.PositiveInfinity;
    }

    /// <summary>
    /// Whether half of the campaigns cannot stay within a half-width, as a tenth of the draws shows where it is far off.
    /// </summary>
    /// <remarks>
    /// The first hundred points of the sequence count a share right to 0.06; less than a fifth of them is no half.
    /// </remarks>
    internal static bool IsFarAbove(double halfWidthDb, PlanBasis basis, SweepNumbers numbers, Confidence confidence) =>
        !numbers.Repeated || Widths(basis, numbers, confidence, FewPoints).Count(width => width <= halfWidthDb) < FewPoints / 5;

    private static double[] Widths(PlanBasis basis, SweepNumbers numbers, Confidence confidence, int points)
    {
        PlannedRepeats units = basis.UnitRepeats(numbers);
        double covered = units.OfMean(basis.UnitVariance(numbers), numbers.Units), coveredFreedom = units.Freedom(numbers.Units);
        double reference = basis.ReferenceRepeats.OfMean(basis.ReferenceDeviationDb * basis.ReferenceDeviationDb,
            numbers.ReferenceSweeps);
        double referenceFreedom = basis.ReferenceRepeats.Freedom(numbers.ReferenceSweeps);
        double rounding = basis.RoundingDb * basis.RoundingDb;
        WidenedInterval widened = basis.TypeB.Widened(confidence.TwoSidedQuantile);
        double[] ratioCovered = ChanceGrid.VarianceRatios(0, coveredFreedom, points);
        double[] ratioReference = ChanceGrid.VarianceRatios(1, referenceFreedom, points);
        // The interval never takes more degrees of freedom than the scatter usual around a frequency gives.
        double usual = WelchSatterthwaite.DegreesOfFreedom(
            [new(Math.Sqrt(covered + rounding), coveredFreedom), new(Math.Sqrt(reference + rounding), referenceFreedom)]);
        StudentQuantile student = StudentQuantile.Of(confidence.TwoSidedQuantile);
        var widths = new double[points];
        for (int i = 0; i < widths.Length; i++)
        {
            ReadOnlySpan<Contribution> parts =
            [
                new(Math.Sqrt((covered * ratioCovered[i]) + rounding), coveredFreedom),
                new(Math.Sqrt((reference * ratioReference[i]) + rounding), referenceFreedom),
            ];
            double dof = Math.Min(usual, WelchSatterthwaite.DegreesOfFreedom(parts));
            widths[i] = widened.Half(WelchSatterthwaite.Combined(parts) * student.At(dof), dof);
        }

        return widths;
    }
}
