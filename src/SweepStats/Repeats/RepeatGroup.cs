using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>
/// Sweeps that repeat each other with nothing changed on purpose in between: of one role, one specimen and one placement.
/// Immutable.
/// </summary>
/// <remarks>A specimen whose every placement was swept once is one group: its sweeps are its placements.</remarks>
public sealed record RepeatGroup
{
    /// <summary>What the sweeps were taken for: floor, reference or covered.</summary>
    public required SweepRole Role { get; init; }

    /// <summary>Which specimen; null for floor and reference.</summary>
    public required SpecimenName? Specimen { get; init; }

    /// <summary>Which placement; null where none is named or where the sweeps are the placements.</summary>
    public required string? Placement { get; init; }

    /// <summary>
    /// Points of the grid at which the sweeps were compared: clear of the floor, nothing transmitting; for floor sweeps all but
    /// transmitters.
    /// </summary>
    public required ImmutableArray<int> Points { get; init; }

    /// <summary>The sweeps, at least two, in campaign order.</summary>
    public required ImmutableArray<RepeatedSweep> Sweeps { get; init; }

    /// <summary>
    /// Whether its sweeps are the placements: they differ by the putting back too, and need not scatter as sweeps of one
    /// placement do.
    /// </summary>
    public bool IsOfPlacements =>
        Role == SweepRole.Covered && Placement is null && Sweeps.Any(s => s.Sweep.Placement is not null);

    /// <summary>Offsets of the sweeps in dB, in their order.</summary>
    internal double[] Offsets() => [.. Sweeps.Select(s => s.Offset.Value)];
}

/// <summary>How one sweep differs from the middle of its group. Immutable.</summary>
/// <param name="Sweep">Which sweep.</param>
/// <param name="Offset">
/// What it lies above the middle as a whole: mean over frequency of its distance from the median of the group.
/// </param>
/// <param name="Shape">Root mean square over frequency of what is left without the offset.</param>
/// <param name="RestDb">What is left without the offset at each of the group's points.</param>
public sealed record RepeatedSweep(Sweep Sweep, Decibels Offset, Decibels Shape, SweepRests RestDb);
