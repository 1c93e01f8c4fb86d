using System.Collections.Immutable;
using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>Standard deviation that a level adds to the shielding of a single sweep.</summary>
/// <param name="Level">From what to what.</param>
/// <param name="DeviationDb">In dB; 0 where chance explains all of it.</param>
public readonly record struct LevelDeviation(VarianceLevel Level, double DeviationDb);

/// <summary>How specimens and lots differ at one frequency. Immutable.</summary>
public sealed record LotFrequency
{
    /// <summary>The frequency.</summary>
    public required Hertz At { get; init; }

    /// <summary>Scatter by level, outermost first, the innermost last; empty where some specimen is known from below only, or nothing repeats.</summary>
    public required ImmutableArray<LevelDeviation> Scatter { get; init; }

    /// <summary>Specimens known from below only.</summary>
    public required int Capped { get; init; }

    /// <summary>Probability of lots that differ this much where they are alike; null where too few specimens tell.</summary>
    public required double? Probability { get; init; }

    /// <summary>The same allowing for the number of frequencies looked at: at most q where a share q of false alarms among the alarms is allowed.</summary>
    public required double? Adjusted { get; init; }
}
