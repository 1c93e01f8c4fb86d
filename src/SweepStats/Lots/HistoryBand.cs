using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>How lots of several campaigns compare over a named band. Immutable.</summary>
public sealed record HistoryBand
{
    /// <summary>The user's name of it.</summary>
    public required string Name { get; init; }

    /// <summary>Its limits as the campaigns give them.</summary>
    public required FrequencyBand Limits { get; init; }

    /// <summary>First to last compared frequency within.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>
    /// Share of the band, in log frequency, where every specimen of every campaign is bounded from both sides: all figures are of
    /// this part.
    /// </summary>
    public required double ClearShare { get; init; }

    /// <summary>Lots, campaign by campaign.</summary>
    public required ImmutableArray<HistoryLot> Lots { get; init; }

    /// <summary>
    /// Every two lots of two specimens and more, by their means over the band. A band is never surer than the answer for the
    /// pair: Adjusted is the larger of that and of what allows for the number of bands.
    /// </summary>
    public required ImmutableArray<HistoryPair> Pairs { get; init; }
}

/// <summary>Limits that a campaign gives a named band.</summary>
/// <param name="Campaign">Label of the campaign.</param>
/// <param name="Limits">From where to where.</param>
public readonly record struct CampaignBand(string Campaign, FrequencyBand Limits);

/// <summary>A named band that is not compared: campaigns give it other limits, or no compared frequency lies in it.</summary>
/// <param name="Name">The user's name of it.</param>
/// <param name="Of">What each campaign that names it says.</param>
public sealed record BandLeftOut(string Name, ImmutableArray<CampaignBand> Of)
{
    /// <summary>Campaigns give it other limits: nobody can know which are meant.</summary>
    public bool LimitsDiffer => Of.Select(c => c.Limits).Distinct().Count() > 1;
}
