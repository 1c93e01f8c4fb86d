using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Budgets;

/// <summary>At which frequencies a specimen gets a budget.</summary>
internal static class BudgetPlaces
{
    /// <summary>
    /// The analysed frequencies nearest to those asked for, each once; without any the one where the specimen's claim is weakest.
    /// </summary>
    public static ImmutableArray<int> Of(ShieldingCurve curve, FrequencyGrid grid, ImmutableArray<Hertz> asked,
        Requirement? requirement) => asked.IsEmpty
        ? Weakest(curve, requirement) is { } weakest ? [weakest] : []
        : [.. asked.Select(at => grid.NearestPoint(at)).Distinct().Order()];

    // Where something is asked for, the least room over that counts; a requirement may leave out part of the band, or all of it.
    private static int? Weakest(ShieldingCurve curve, Requirement? requirement)
    {
        ReadOnlySpan<double> limits = curve.Readings.OneSidedLowDb;
        bool asks = requirement is not null
            && Enumerable.Range(0, curve.Readings.Length).Any(f => requirement.At(curve.Readings.At(f)) is not null);
        int? weakest = null;
        double least = double.PositiveInfinity;
        for (int f = 0; f < curve.Readings.Length; f++)
        {
            double? wanted = asks ? requirement!.At(curve.Readings.At(f))?.Value : 0;
            double room = (limits[f] - wanted) ?? double.PositiveInfinity;
            (weakest, least) = room < least ? (f, room) : (weakest, least);
        }

        return weakest;
    }
}
