using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>
/// Mean shielding of one lot over the part of a band where every specimen is bounded from both sides. Immutable.
/// </summary>
public sealed record LotSummary
{
    /// <summary>Name of the lot.</summary>
    public required string Lot { get; init; }

    /// <summary>Specimens of it.</summary>
    public required int Specimens { get; init; }

    /// <summary>Mean over specimens and band in dB; not a number where no part of the band is clear.</summary>
    public required double MeanDb { get; init; }

    /// <summary>
    /// Interval of the mean of the lot, by the scatter of its specimens and the errors that all specimens share: reference,
    /// floor, and what is stated. Null for a single specimen, and where nobody can tell how far the reference is off.
    /// </summary>
    public required Interval? MeanIntervalDb { get; init; }

    /// <summary>
    /// The same by the scatter of its specimens alone, for comparing lots of one campaign: what all specimens share drops out.
    /// Null for a single specimen.
    /// </summary>
    public required Interval? BetweenLotsIntervalDb { get; init; }

    /// <summary>Specimens repeat, but the errors that they share are not known: the reference was swept once.</summary>
    public bool SharedUnknown => BetweenLotsIntervalDb is not null && MeanIntervalDb is null;

    /// <summary>
    /// What the lot promises: a share of its specimens has at least this mean shielding; one-sided normal tolerance limit, less
    /// the errors that all specimens share. Null for a single specimen, and where nobody can tell how far the reference is off.
    /// </summary>
    public required double? ToleranceLimitDb { get; init; }

    /// <summary>
    /// The same by the scatter of its specimens alone, for comparing lots of one campaign; null for a single specimen.
    /// </summary>
    public required double? BetweenLotsLimitDb { get; init; }

    /// <summary>The same without assuming a distribution; null where the lot has too few specimens for one.</summary>
    public required double? RankLimitDb { get; init; }

    /// <summary>
    /// Plain mean of reference less covered level over all readings of the lot, noise and capped readings included, to show what
    /// such a mean hides.
    /// </summary>
    public required double PlainMeanDb { get; init; }
}

/// <summary>Two lots, and whether they are the same within a margin.</summary>
/// <param name="First">One lot.</param>
/// <param name="Second">The other.</param>
/// <param name="Tested">First less second, by the scatter of their specimens.</param>
public sealed record LotPair(string First, string Second, Equivalence Tested);

/// <summary>Mean shielding of one specimen over the clear part of a band.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="MeanDb">In dB; not a number where no part of the band is clear.</param>
public readonly record struct SpecimenMean(SpecimenName Name, double MeanDb);
