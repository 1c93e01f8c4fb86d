using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Errors of a mean that all specimens of a campaign have in common: reference, floor, and what is stated. In dB.</summary>
internal static class SharedErrors
{
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
        int units = left.Length;
        // Jackknife: leaving out a unit moves the mean by this much, (n − 1)/n of the squares are its variance.
        double jackknifed = (units - 1.0) / units * Sample.SquaredDeviations(left, Sample.Mean(left));
        var reference = new Contribution(Math.Sqrt(jackknifed), units - 1);
        return
        [
            spread.ReferenceWorth?.OfFigure(reference) ?? reference,
            new Contribution(Math.Abs(curves.Average(c => mean(f => c.Spread?.FloorShift(f) ?? 0))), spread.FloorDegreesOfFreedom),
            new Contribution(spread.TypeB.StandardUncertainty, spread.TypeB.DegreesOfFreedom),
        ];
    }
}
