using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Bands;

/// <summary>A figure of a whole band: bounded from both sides, only from below, or not to be had.</summary>
/// <param name="Value">Estimate; null where capped frequencies make the figure a bound, or repeats are missing.</param>
/// <param name="Low">Lower limit; null where repeats are missing.</param>
/// <param name="High">Upper limit; null where unbounded.</param>
public readonly record struct BandFigure(double? Value, double? Low, double? High);

/// <summary>What can be said of one specimen over the whole analysed band. Immutable.</summary>
public sealed record BandStatement
{
    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>The band.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>
    /// "The shielding is at least this much over the whole band": the lowest one-sided lower limit. No correction for many
    /// frequencies is due, since the limit at the worst frequency already covers. Null where some frequency allows no limit.
    /// </summary>
    public required Decibels? AtLeast { get; init; }

    /// <summary>Where the lowest limit lies.</summary>
    public required Hertz? WeakestAt { get; init; }

    /// <summary>Mean over the band in dB, weighted by log frequency.</summary>
    public required BandFigure MeanDb { get; init; }

    /// <summary>What the error of the mean is made of; null where the mean is not to be had.</summary>
    internal FigureParts? MeanParts { get; init; }

    /// <summary>Shielding that nine tenths of the band reach, in dB.</summary>
    public required BandFigure TenthPercentileDb { get; init; }

    /// <summary>Share of the band, 0 to 1, that meets the requirement; null without one.</summary>
    public required BandFigure? ShareMeeting { get; init; }

    /// <summary>Frequencies at which the floor leaves a bound from below at best.</summary>
    public required int CappedCount { get; init; }

    /// <summary>Frequencies at which an overloaded receiver leaves a bound from below at best.</summary>
    public int OverloadedCount { get; init; }

    /// <summary>Frequencies in all.</summary>
    public required int PointCount { get; init; }
}
