using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>What is asked of a test with receivers.</summary>
public sealed record ReceiverQuestion
{
    /// <summary>Highest over lowest frequency of stations that are taken to meet one and the same shielding, unless stated: a
    /// third of an octave.</summary>
    public const double UsualRatio = 1.26;

    /// <summary>Two-sided level of intervals, one-sided level of bounds and of the claim.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>Shielding to be claimed: SE is at least this much; null where nothing is.</summary>
    public Decibels? Claim { get; init; }

    /// <summary>Highest over lowest frequency of a group; 1 keeps all frequencies apart.</summary>
    public double Ratio { get; init; } = UsualRatio;
}
