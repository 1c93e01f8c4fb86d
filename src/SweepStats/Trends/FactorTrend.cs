using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>What an ordered factor, such as the number of washes, does to the shielding. Immutable.</summary>
public sealed record FactorTrend
{
    /// <summary>Name of the factor: the user's column.</summary>
    public required string Factor { get; init; }

    /// <summary>Level of two-sided intervals; one less it is the chance of refusing a line that is straight.</summary>
    public required Confidence Confidence { get; init; }

    /// <summary>The specimens, by value, then in the order of the campaign.</summary>
    public required ImmutableArray<FactorSpecimen> Specimens { get; init; }

    /// <summary>The values measured, rising.</summary>
    public required ImmutableArray<FactorGroup> Groups { get; init; }

    /// <summary>What is missing for a trend.</summary>
    public required TrendLack Lack { get; init; }

    /// <summary>The whole band, then each named one.</summary>
    public required ImmutableArray<TrendBand> Bands { get; init; }

    /// <summary>Frequency by frequency.</summary>
    public required ImmutableArray<TrendFrequency> Frequencies { get; init; }

    /// <summary>How far the requirement is met; null where nothing is asked.</summary>
    public required TrendRequirement? Requirement { get; init; }

    /// <summary>The whole analysed band.</summary>
    public TrendBand Whole => Bands[0];

    /// <summary>Whether the factor counts: all its values are whole numbers.</summary>
    public bool IsCount => Groups.All(g => g.Value == Math.Floor(g.Value));
}
