namespace SweepStats.Lots;

/// <summary>Whether lots are alike, and how much their specimens scatter. Immutable.</summary>
public sealed record LotComparison
{
    /// <summary>Names of the lots in their order.</summary>
    public required ImmutableArray<string> Lots { get; init; }

    /// <summary>What was asked.</summary>
    public required LotQuestion Question { get; init; }

    /// <summary>Frequency by frequency.</summary>
    public required ImmutableArray<LotFrequency> Frequencies { get; init; }

    /// <summary>Where lots differ, the strongest first; empty where they do not.</summary>
    public required ImmutableArray<LotStretch> Stretches { get; init; }

    /// <summary>The whole band, then each named one.</summary>
    public required ImmutableArray<LotBand> Bands { get; init; }

    /// <summary>
    /// Whether the lots differ at a frequency, allowing for the number of frequencies; only where the whole band says that they
    /// differ.
    /// </summary>
    public bool DifferAt(LotFrequency at) => at?.Adjusted <= Question.FalseAlarm && Whole.Probability <= Question.FalseAlarm;

    /// <summary>The whole analysed band.</summary>
    public LotBand Whole => Bands[0];
}
