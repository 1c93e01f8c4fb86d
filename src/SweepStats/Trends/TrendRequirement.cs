using SweepStats.Bands;
using SweepStats.Quantities;

namespace SweepStats.Trends;

/// <summary>
/// How far along the ordered factor the requirement is met, at every frequency at which something is asked. Immutable.
/// </summary>
public sealed record TrendRequirement
{
    /// <summary>What is asked, and the one-sided level of both statements.</summary>
    public required DecisionRule Rule { get; init; }

    /// <summary>Frequencies at which something is asked.</summary>
    public required int Frequencies { get; init; }

    /// <summary>Of them, those held against the requirement by the means at each value.</summary>
    public required int ByGroups { get; init; }

    /// <summary>Of these, those where some specimen is known from below only.</summary>
    public required int Hidden { get; init; }

    /// <summary>
    /// Largest value, within those measured, up to which the mean of such specimens is shown to meet at every frequency; null
    /// where at none.
    /// </summary>
    public required double? MetUpTo { get; init; }

    /// <summary>
    /// Smallest value, within those measured, from which on it is shown to fail at some frequency; null where at none.
    /// </summary>
    public required double? NotMetFrom { get; init; }

    /// <summary>
    /// The frequency that lets the requirement be met no further, or that has least to spare; null where nothing is told.
    /// </summary>
    public required Hertz? DecidedAt { get; init; }

    /// <summary>What stands against telling more.</summary>
    public required TrendObstacle Obstacle { get; init; }

    /// <summary>Codes of findings that could overturn what the figures say.</summary>
    public required ImmutableArray<string> OverturnedBy { get; init; }
}
