using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Fields;

/// <summary>Where in the band one specimen is shown to leave no more of a steady field than is tolerable. Immutable.</summary>
/// <remarks>
/// Needed is 20·log10(threat/tolerable). Shown is a frequency whose one-sided lower limit, less what findings may take off it,
/// reaches that: each frequency by itself at the level of the intervals, not all of them at once (<see cref="ResidualField"/>
/// tells that).
/// </remarks>
/// <param name="Name">Which specimen.</param>
/// <param name="Needed">Shielding that leaves the tolerable field.</param>
/// <param name="Shown">Stretches of the band where it is shown.</param>
/// <param name="ShownCount">Frequencies at which it is shown.</param>
public sealed record NeededShielding(SpecimenName Name, Decibels Needed, ImmutableArray<FrequencyBand> Shown, int ShownCount)
{
    /// <summary>
    /// One for each specimen; none where no tolerable field is stated, or a fault stands against the measurement.
    /// </summary>
    /// <param name="threat">The field; null where none is stated.</param>
    /// <param name="measured">Curves, and what was found against them.</param>
    public static ImmutableArray<NeededShielding> Of(FieldThreat? threat, PulseBasis measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        if (measured.Trust == Trust.Untrustworthy || threat?.TolerableVoltsPerMetre is not { } tolerable)
        {
            return [];
        }

        var needed = new Decibels(20 * Math.Log10(threat.VoltsPerMetre / tolerable));
        return [.. measured.Curves.Select(c => Of(c, needed, measured.Campaign.Grid, measured.Findings))];
    }

    private static NeededShielding Of(ShieldingCurve curve, Decibels needed, FrequencyGrid grid, ImmutableArray<Finding> findings)
    {
        var biases = new SpecimenBiases(curve.Name, findings);
        bool IsShown(int f) => curve.Readings[f] is not ShieldingReading.Unreadable
            && curve.Readings[f].Evidence.OneSidedLow is { } low
            && low.Value - biases.SumAt(grid[f]).LowerByDb >= needed.Value;
        return new NeededShielding(curve.Name, needed, Stretches.Where(grid, IsShown), Enumerable.Range(0, grid.Count)
            .Count(IsShown));
    }
}
