using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>What a campaign is to show. Decibels throughout.</summary>
public sealed record PlanQuestion
{
    /// <summary>Two-sided level of intervals.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>One-sided level of claims, 0.5 or more; that of the intervals unless given.</summary>
    public Confidence? ClaimLevel { get; init; }

    /// <summary>Half-width wanted of the interval at one frequency; null where none is asked for.</summary>
    public double? HalfWidthDb { get; init; }

    /// <summary>R of the claim "SE is at least R"; null where nothing is to be claimed.</summary>
    public double? ClaimDb { get; init; }

    /// <summary>Where the claim comes from a pilot's requirement; null where it was asked for.</summary>
    public PilotRequirement? FromRequirement { get; init; }

    /// <summary>
    /// How much more than the claim the specimen truly shields; nothing can be claimed of one that shields no more.
    /// </summary>
    public double MarginDb { get; init; } = 3;

    /// <summary>Share of campaigns in which the claim is to succeed.</summary>
    public double Probability { get; init; } = 0.9;

    /// <summary>Numbers of sweeps that claim and expected result are reckoned for where no half-width is asked for.</summary>
    public required SweepNumbers Numbers { get; init; }

    /// <summary>Whether the placements of <see cref="Numbers"/> hold; else a wanted half-width decides them.</summary>
    public bool PlacementsFixed { get; init; }

    /// <summary>
    /// Whether the sweeps of each placement of <see cref="Numbers"/> hold; else a wanted half-width decides them.
    /// </summary>
    public bool SweepsFixed { get; init; }

    /// <summary>
    /// Whether the reference sweeps of <see cref="Numbers"/> hold for every answer; else as many are taken as covered sweeps.
    /// </summary>
    public bool ReferenceFixed { get; init; }

    /// <summary>Whether nothing is left to search for a wanted half-width: placements that are not known cannot be.</summary>
    internal bool AllFixed(bool byPlacement) => SweepsFixed && (PlacementsFixed || !byPlacement);
}
