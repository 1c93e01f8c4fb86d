using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>
/// Errors of a mean that all specimens of a campaign have in common: reference, floor, and what is stated. In dB.
/// </summary>
internal static class SharedErrors
{
    /// <summary>
    /// How far errors together reach, each at its own quantile of Student's t: the root of the squares of the reaches.
    /// </summary>
    /// <remarks>
    /// Welch's and Satterthwaite's degrees of freedom would be too many where a reference of two sweeps happens to repeat well
    /// beside many specimens: they held in 90 %. Source: Zou and Donner 2008 (see <see cref="ToleranceBound"/>).
    /// </remarks>
    /// <param name="parts">The errors.</param>
    /// <param name="probability">Of staying below: 0.975 for a two-sided level of 95 %.</param>
    public static double Reach(ReadOnlySpan<Contribution> parts, double probability)
    {
        StudentQuantile quantile = StudentQuantile.Of(probability);
        double squares = 0;
        foreach (Contribution part in parts)
        {
            double reach = part.StandardUncertainty > 0 ? part.StandardUncertainty * quantile.At(part.DegreesOfFreedom) : 0;
            squares += reach * reach;
        }

        return Math.Sqrt(squares);
    }

    /// <summary>The three parts; null where the reference does not repeat.</summary>
    /// <param name="curves">The specimens.</param>
    /// <param name="mean">The mean over the band of something known at each frequency.</param>
    public static Contribution[]? Of(IReadOnlyList<ShieldingCurve> curves, Func<Func<int, double>, double> mean)
    {
        if (curves[0].Spread is not { ReferenceUnits: > 1 } spread)
        {
            return null;
        }

        double[] left = [.. Enumerable.Range(0, spread.ReferenceUnits).Select(j => mean(f => spread.WithoutReference(j, f)))];
        return Parts(spread, left, curves.Average(c => mean(f => c.Spread?.FloorShift(f) ?? 0)));
    }

    /// <summary>The same at one frequency.</summary>
    /// <param name="f">Its place.</param>
    /// <param name="spread">Of any specimen: all have the same reference.</param>
    /// <param name="floorShifts">
    /// Of each specimen the change of its shielding when the floor lies one standard error higher.
    /// </param>
    public static Contribution[]? At(int f, CurveSpread? spread, double[] floorShifts)
    {
        if (spread is not { ReferenceUnits: > 1 })
        {
            return null;
        }

        var left = new double[spread.ReferenceUnits];
        for (int j = 0; j < left.Length; j++)
        {
            left[j] = spread.WithoutReference(j, f);
        }

        double floor = 0;
        foreach (double shift in floorShifts)
        {
            floor += shift;
        }

        return Parts(spread, left, floor / floorShifts.Length);
    }

    private static Contribution[] Parts(CurveSpread spread, double[] left, double floorDb)
    {
        int units = left.Length;
        // Jackknife: leaving out a unit moves the mean by this much, (n − 1)/n of the squares are its variance.
        double jackknifed = (units - 1.0) / units * Sample.SquaredDeviations(left, Sample.Mean(left));
        var reference = new Contribution(Math.Sqrt(jackknifed), units - 1);
        return
        [
            spread.ReferenceWorth?.OfFigure(reference) ?? reference,
            new Contribution(Math.Abs(floorDb), spread.FloorDegreesOfFreedom),
            new Contribution(spread.TypeB.StandardUncertainty, spread.TypeB.DegreesOfFreedom),
        ];
    }
}
