using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>What is asked of specimens among which one is to be chosen.</summary>
public sealed record ChoiceQuestion
{
    /// <summary>
    /// A specimen to hold the others against, such as a solid sheet: it stands beside the ranking and is no candidate; null for
    /// none.
    /// </summary>
    public SpecimenName? Yardstick { get; init; }

    /// <summary>Properties of which less is better, such as a price.</summary>
    public ImmutableArray<string> LowerIsBetter { get; init; } = [];

    /// <summary>Properties of which more is better.</summary>
    public ImmutableArray<string> HigherIsBetter { get; init; } = [];

    /// <summary>Properties that are shown and not weighed.</summary>
    public ImmutableArray<string> Shown { get; init; } = [];

    /// <summary>All properties that stand beside the ranking.</summary>
    public IEnumerable<string> Columns => [.. LowerIsBetter, .. HigherIsBetter, .. Shown];
}
