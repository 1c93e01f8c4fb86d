using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>What the shielding at one frequency is held against the requirement by.</summary>
public enum TrendBasis
{
    /// <summary>Nothing: too little is known there.</summary>
    Nothing,

    /// <summary>The straight line.</summary>
    Line,

    /// <summary>
    /// The means at each value of the factor: some specimen is known from below only, or no straight line holds.
    /// </summary>
    Groups,
}

/// <summary>The trend at one frequency. Immutable.</summary>
public sealed record TrendFrequency
{
    /// <summary>The frequency.</summary>
    public required Hertz At { get; init; }

    /// <summary>Specimens known from below only.</summary>
    public required int Capped { get; init; }

    /// <summary>The line; null where some specimen is known from below only, or too little was measured.</summary>
    public required TrendLine? Line { get; init; }

    /// <summary>
    /// Probability that the line is straight, allowing for the number of frequencies (Holm); null without a line.
    /// </summary>
    public required double? StraightAdjusted { get; init; }

    /// <summary>Shielding asked for; null where nothing is.</summary>
    public required Decibels? Required { get; init; }

    /// <summary>What it is held against the requirement by.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>
    /// Value of the factor up to which the requirement is shown to be met at this frequency; null where at none.
    /// </summary>
    public double? MetUpTo { get; init; }

    /// <summary>
    /// Value from which on it is shown to fail here, allowing for the number of frequencies; null where at none.
    /// </summary>
    public double? NotMetFrom { get; init; }

    internal FactorLevel? Level { get; init; }

    /// <summary>Shielding of each specimen in dB, or its bound, in the order of the specimens.</summary>
    public required ImmutableArray<double> ValuesDb { get; init; }

    /// <summary>
    /// Limits of the mean of such specimens at a value of the factor, each at a one-sided level and with what all specimens share
    /// in it; null where nothing is known.
    /// </summary>
    public Interval? LimitsAt(double value, Confidence oneSided) => Level?.At(value, oneSided.Level);
}
