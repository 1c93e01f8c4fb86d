using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>What is asked of lots.</summary>
public sealed record LotQuestion
{
    /// <summary>Level of intervals, and confidence of tolerance limits.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>Share of the specimens of a lot that a tolerance limit holds for.</summary>
    public double Share { get; init; } = 0.95;

    /// <summary>Lots whose means differ by less count as the same, in dB.</summary>
    public double MarginDb { get; init; } = 1;

    /// <summary>
    /// Name of a number that the campaign states of each specimen, such as how often it was washed, along which the shielding is
    /// followed; null where lots have no order.
    /// </summary>
    public string? OrderedBy { get; init; }

    /// <summary>Chance of taking lots that are alike for different.</summary>
    public double FalseAlarm => 1 - Confidence.Level;
}
