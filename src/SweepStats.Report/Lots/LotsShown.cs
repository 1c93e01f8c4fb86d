using SweepStats.Lots;
using SweepStats.Quantities;

namespace SweepStats.Report.Lots;

/// <summary>Lots side by side, of one campaign or of several.</summary>
/// <param name="Question">What was asked of them.</param>
/// <param name="Band">Where.</param>
/// <param name="ClearShare">Share of the band that the means are of.</param>
/// <param name="Lots">Each under its own name.</param>
/// <param name="Specimens">Their specimens.</param>
internal sealed record LotsShown(LotQuestion Question, FrequencyBand Band, double ClearShare, ImmutableArray<LotSummary> Lots,
    ImmutableArray<SpecimenMean> Specimens)
{
    /// <summary>Lots of one campaign over the whole band, by their own names.</summary>
    public static LotsShown Of(LotComparison lots) =>
        new(lots.Question, lots.Whole.Band, lots.Whole.ClearShare, lots.Whole.Lots, lots.Whole.Specimens);

    /// <summary>Lots of several campaigns, labelled by these.</summary>
    public static LotsShown Of(LotHistory history) =>
        new(history.Question, history.Band, history.ClearShare, [.. history.Lots.Select(l => l.Figures with { Lot = l.Label })],
            history.Specimens);
}
