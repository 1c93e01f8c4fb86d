using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Repeats;

namespace SweepStats.Shielding;

/// <summary>How the signal of covered repeats scatters where it stands clear of the floor.</summary>
/// <remarks>A specimen that stands nowhere clear of it is taken to scatter as the others of the campaign do, their degrees of
/// freedom together.</remarks>
/// <param name="specimens">All specimens.</param>
/// <param name="floor">The floor.</param>
internal sealed class CoveredScatter(ImmutableArray<SpecimenBlock> specimens, NoiseFloor floor)
{
    // Three quarters of the scatter of a signal show there.
    private const double ClearDb = 6;

    private readonly Lazy<(double? Sweeps, double? Placements)> _usual = new(() =>
    {
        RepeatedLevels[] all =
            [.. specimens.Select(s => RepeatedLevels.From(s.Block, 0, RepeatKind.Covered, SerialCorrelation.Untested))];
        return (Usual([.. all.Where(l => !(l.PlacementCount > 1))], floor),
            Usual([.. all.Where(l => l.PlacementCount > 1)], floor));
    });

    /// <summary>Standard deviation from one unit to the next in dB, its own or the usual one; 0 where none is known.</summary>
    public double DeviationDb(RepeatedLevels covered) =>
        Math.Sqrt(covered.SignalVariance(floor, ClearDb)
            ?? (covered.PlacementCount > 1 ? _usual.Value.Placements : _usual.Value.Sweeps) ?? 0);

    private static double? Usual(RepeatedLevels[] levels, NoiseFloor floor)
    {
        (double Variance, int Freedom)[] known =
            [.. levels.Select(l => (Variance: l.SignalVariance(floor, ClearDb), Freedom: l.UnitCount - 1))
            .Where(l => l.Variance is not null).Select(l => (l.Variance!.Value, l.Freedom))];
        return known.Length == 0 ? null : known.Sum(k => k.Variance * k.Freedom) / known.Sum(k => k.Freedom);
    }
}
