using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>A lot of one of several campaigns. Immutable.</summary>
/// <param name="Campaign">Label of its campaign.</param>
/// <param name="Figures">Over the part of the band that is clear for every specimen of every campaign.</param>
public sealed record HistoryLot(string Campaign, LotSummary Figures)
{
    /// <summary>Campaign and lot, as no other lot is called.</summary>
    public string Label => Labelled(Campaign, Figures.Lot);

    internal static string Labelled(string campaign, string lot) => $"{campaign}: {lot}";
}

/// <summary>Two lots, of one campaign or of two. Immutable.</summary>
/// <param name="First">One lot.</param>
/// <param name="Second">The other.</param>
/// <param name="Tested">First less second; between campaigns with the errors of both references and floors and what both state; null where it cannot be told.</param>
/// <param name="Adjusted">Probability of a difference this large between lots that are alike, allowing for the number of pairs (Holm); null where it cannot be told.</param>
public sealed record HistoryPair(HistoryLot First, HistoryLot Second, Equivalence? Tested, double? Adjusted);

/// <summary>How lots of several campaigns compare, each campaign with its own reference. Immutable.</summary>
public sealed record LotHistory
{
    /// <summary>What was asked.</summary>
    public required LotQuestion Question { get; init; }

    /// <summary>The band that all campaigns share.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>Frequencies compared: those of the campaign with the fewest; the others are read between their own frequencies, along log frequency.</summary>
    public required int PointCount { get; init; }

    /// <summary>Share of that band, in log frequency, where every specimen of every campaign is bounded from both sides: all figures are of this part.</summary>
    public required double ClearShare { get; init; }

    /// <summary>Lots, campaign by campaign.</summary>
    public required ImmutableArray<HistoryLot> Lots { get; init; }

    /// <summary>Specimens, under the labels of their lots; not a number where no part of the band is clear.</summary>
    public required ImmutableArray<SpecimenMean> Specimens { get; init; }

    /// <summary>Every two lots of two specimens and more.</summary>
    public required ImmutableArray<HistoryPair> Pairs { get; init; }

    /// <summary>Lots and specimens over time, as far as there are enough of them.</summary>
    public required ImmutableArray<ControlChart> OverTime { get; init; }
}
