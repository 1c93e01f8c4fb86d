namespace SweepStats.Planning;

/// <summary>What campaigns of one kind show of one specimen at one frequency, in dB.</summary>
public sealed record ExpectedResult
{
    /// <summary>Lower end of the interval in the middle of all campaigns.</summary>
    public required double MedianLowDb { get; init; }

    /// <summary>Upper end in the middle of all campaigns; infinite where the floor hides it in half of them and more.</summary>
    public required double MedianHighDb { get; init; }

    /// <summary>Share of campaigns that bound the shielding from both sides.</summary>
    public required double BoundedShare { get; init; }

    /// <summary>One-sided lower limits at the level of claims, in no order.</summary>
    public required ImmutableArray<double> OneSidedLowDb { get; init; }
}
