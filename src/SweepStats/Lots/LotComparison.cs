using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Whether lots are alike, and how much their pieces scatter. Immutable.</summary>
public sealed record LotComparison
{
    /// <summary>Frequency by frequency.</summary>
    public required ImmutableArray<LotFrequency> Frequencies { get; init; }

    /// <summary>Lots in their order.</summary>
    public required ImmutableArray<LotSummary> Lots { get; init; }

    /// <summary>Every two lots of two specimens and more.</summary>
    public required ImmutableArray<LotPair> Pairs { get; init; }

    /// <summary>Share of the band, in log frequency, where every specimen is bounded from both sides: all figures of a band are of this part.</summary>
    public required double ClearShare { get; init; }

    /// <summary>One answer for that part of the band, which knows that the frequencies of a sweep go together; null where too few specimens tell.</summary>
    public required CurveAnova? Band { get; init; }

    /// <summary>Scatter of the mean over that part of the band by level, outermost first; empty where nothing repeats.</summary>
    public required ImmutableArray<LevelDeviation> BandScatter { get; init; }
}
