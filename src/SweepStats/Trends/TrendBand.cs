using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>The trend of the mean shielding over one band. Immutable.</summary>
public sealed record TrendBand
{
    /// <summary>The user's name of the band; null for the whole analysed one.</summary>
    public required string? Name { get; init; }

    /// <summary>First to last frequency of it.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>
    /// Share of the band, in log frequency, where every specimen is bounded from both sides: the means are over this part.
    /// </summary>
    public required double ClearShare { get; init; }

    /// <summary>The line through the means of the specimens; null where no part is clear or too little was measured.</summary>
    public required TrendLine? Line { get; init; }

    /// <summary>
    /// Whether the line counts as straight: the chance of so much beside it is not below that of a false alarm.
    /// </summary>
    public required bool IsStraight { get; init; }

    /// <summary>
    /// Probability of lots that lie so far apart about the line where their specimens are independent; null where no lot has
    /// specimens at two values, or one lot is all.
    /// </summary>
    public required double? LotsApartProbability { get; init; }

    /// <summary>
    /// Slope that all lots share, each with a level of its own, with its interval in dB; null unless the lots lie apart.
    /// </summary>
    public required TrendSlope? WithinLots { get; init; }
}

/// <summary>A slope with its two-sided interval.</summary>
/// <param name="SlopeDb">dB for each unit of the factor.</param>
/// <param name="IntervalDb">Its interval.</param>
public readonly record struct TrendSlope(double SlopeDb, Interval IntervalDb);
