using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>How specimens and lots differ at one frequency. Immutable.</summary>
public sealed record LotFrequency
{
    /// <summary>The frequency.</summary>
    public required Hertz At { get; init; }

    /// <summary>Each lot, in the order of the lots.</summary>
    public required ImmutableArray<LotPoint> Lots { get; init; }

    /// <summary>
    /// Scatter by level, outermost first, the innermost last; empty where some specimen is known from below only, or nothing
    /// repeats.
    /// </summary>
    public required ImmutableArray<LevelDeviation> Scatter { get; init; }

    /// <summary>Specimens known from below only.</summary>
    public required int Capped { get; init; }

    /// <summary>Probability of lots that differ this much where they are alike; null where too few specimens tell.</summary>
    public required double? Probability { get; init; }

    /// <summary>
    /// The same allowing for the number of frequencies looked at: at most q where a share q of false alarms among the alarms is
    /// allowed.
    /// </summary>
    public required double? Adjusted { get; init; }
}

/// <summary>One lot at one frequency.</summary>
/// <param name="MeanDb">
/// Mean over its specimens in dB, with bounds standing in where only those are known; not a number where nothing is known of one.
/// </param>
/// <param name="Bound">Bounds stand in: the mean is one itself, and lies above.</param>
/// <param name="PromisedDb">
/// Lower tolerance limit: a share of its specimens shields at least this much, less the errors that all specimens share; null
/// where too few specimens tell, and where nobody can tell how far the reference is off.
/// </param>
/// <param name="BetweenLotsPromisedDb">
/// The same by the scatter of its specimens alone, for comparing lots of one campaign.
/// </param>
public readonly record struct LotPoint(double MeanDb, bool Bound, double? PromisedDb, double? BetweenLotsPromisedDb)
{
    /// <summary>The promise, or that of the specimens alone where what they share is not known.</summary>
    public double? AtMostPromisedDb => PromisedDb ?? BetweenLotsPromisedDb;
}

/// <summary>Standard deviation that a level adds to the shielding of a single sweep.</summary>
/// <param name="Level">From what to what.</param>
/// <param name="DeviationDb">In dB; 0 where chance explains all of it.</param>
public readonly record struct LevelDeviation(VarianceLevel Level, double DeviationDb);
