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
/// <param name="Tested">
/// First less second in the mean over the band; between campaigns with the errors of both references and floors and what both
/// state; null where it cannot be told.
/// </param>
/// <param name="Adjusted">
/// Probability of lots that differ this much somewhere where they are alike, allowing for the number of pairs (Holm); null where
/// it cannot be told.
/// </param>
public sealed record HistoryPair(HistoryLot First, HistoryLot Second, Equivalence? Tested, double? Adjusted)
{
    /// <summary>Frequency by frequency; empty where a named band is compared.</summary>
    public ImmutableArray<HistoryPoint> Points { get; init; } = [];

    /// <summary>
    /// The same for this pair alone: the smallest of what the mean over the band, the named bands (Holm) and the single
    /// frequencies (false discovery) say, times the number of these questions. Null where it cannot be told.
    /// </summary>
    public double? Probability { get; init; }

    /// <summary>Whether both are of one campaign.</summary>
    public bool IsWithinACampaign => First.Campaign == Second.Campaign;
}

/// <summary>How lots of several campaigns compare, each campaign with its own reference. Immutable.</summary>
public sealed record LotHistory
{
    /// <summary>What was asked.</summary>
    public required LotQuestion Question { get; init; }

    /// <summary>Labels of the campaigns in their order.</summary>
    public required ImmutableArray<string> Campaigns { get; init; }

    /// <summary>The band that all campaigns share.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>
    /// Frequencies compared: those of the campaign with the fewest; the others are read between their own frequencies, along log
    /// frequency.
    /// </summary>
    public required ImmutableArray<Hertz> Frequencies { get; init; }

    /// <summary>How many.</summary>
    public int PointCount => Frequencies.Length;

    /// <summary>
    /// Share of that band, in log frequency, where every specimen of every campaign is bounded from both sides: all figures are
    /// of this part.
    /// </summary>
    public required double ClearShare { get; init; }

    /// <summary>Lots, campaign by campaign.</summary>
    public required ImmutableArray<HistoryLot> Lots { get; init; }

    /// <summary>Specimens, under the labels of their lots; not a number where no part of the band is clear.</summary>
    public required ImmutableArray<SpecimenMean> Specimens { get; init; }

    /// <summary>Every two lots of two specimens and more.</summary>
    public required ImmutableArray<HistoryPair> Pairs { get; init; }

    /// <summary>
    /// Where pairs differ, pair by pair, the strongest of each first; only of pairs of which the answer says that they differ.
    /// </summary>
    public required ImmutableArray<HistoryStretch> Stretches { get; init; }

    /// <summary>Named bands of the campaigns, in the order in which they come.</summary>
    public required ImmutableArray<HistoryBand> Bands { get; init; }

    /// <summary>Named bands that are not compared, and why.</summary>
    public required ImmutableArray<BandLeftOut> BandsLeftOut { get; init; }

    /// <summary>Whether a pair is said to differ.</summary>
    public bool Differ(HistoryPair pair) => pair?.Adjusted <= Question.FalseAlarm;

    /// <summary>
    /// Whether it differs at a frequency, allowing for the number of frequencies; only where the pair is said to differ.
    /// </summary>
    public bool DifferAt(HistoryPair pair, HistoryPoint at) => Differ(pair) && at.Adjusted <= Question.FalseAlarm;

    /// <summary>Lots and specimens over time, as far as there are enough of them.</summary>
    public required ImmutableArray<ControlChart> OverTime { get; init; }
}
