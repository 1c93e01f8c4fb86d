using System.Text.Json;
using SweepStats.Files.Summaries;
using SweepStats.Lots;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Results;

/// <summary>
/// How lots of several campaigns compare, as JSON; decibels unless the name says otherwise, null where there is no figure.
/// </summary>
public static class TogetherJson
{
    /// <summary>Writes the members of an object that is open.</summary>
    public static void Write(Utf8JsonWriter json, LotHistory history)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(history);
        json.MembersOf(Of(history), SummaryNames.Printed.SummaryTogether);
    }

    /// <summary>What is written; the frequencies one by one as they are asked for, since with every pair they are many.</summary>
    internal static SummaryTogether Of(LotHistory history) => new(
        history.Band.Start.Value, history.Band.Stop.Value, history.PointCount, Finite(history.ClearShare),
        history.Question.Confidence.Level,
        [.. history.Stretches.Select(Stretch)],
        [.. history.Lots.Select(Lot)],
        [.. history.Pairs.Select(pair => Pair(pair, history.Question))],
        [.. history.Bands.Select(band => Band(band, history.Question))],
        [.. history.BandsLeftOut.Select(LeftOut)],
        history.Frequencies.Select((at, f) => new SummaryHistoryFrequency(at.Value, Points(history, f))),
        LotsJson.OverTime(history.OverTime));

    private static SummaryHistoryStretch Stretch(HistoryStretch stretch) => new(
        stretch.First.Campaign, stretch.First.Figures.Lot, stretch.Second.Campaign, stretch.Second.Figures.Lot,
        stretch.Band.Start.Value, stretch.Band.Stop.Value, stretch.Frequencies, stretch.Hidden, Finite(stretch.ApartDb));

    private static SummaryHistoryLot Lot(HistoryLot lot) => new(
        lot.Campaign, lot.Figures.Lot, lot.Figures.Specimens, Estimate.Of(lot.Figures.MeanDb, lot.Figures.MeanIntervalDb),
        PromisedDb: Finite(lot.Figures.ToleranceLimitDb),
        PromisedRankDb: Finite(lot.Figures.RankLimitDb),
        PlainMeanDb: Finite(lot.Figures.PlainMeanDb));

    private static SummaryHistoryPair Pair(HistoryPair pair, LotQuestion question) => new(
        pair.First.Campaign, pair.First.Figures.Lot, pair.Second.Campaign, pair.Second.Figures.Lot,
        pair.Tested is { } tested ? Estimate.Of(tested.Difference, tested.Interval(question.FalseAlarm / 2)) : null,
        WithinDb: question.MarginDb,
        PNotWithin: Finite(pair.Tested?.Probability),
        POfMeans: Finite(pair.Tested?.ProbabilityAlike),
        PAdjusted: Finite(pair.Adjusted));

    private static SummaryHistoryBand Band(HistoryBand band, LotQuestion question) => new(
        band.Name, band.Band.Start.Value, band.Band.Stop.Value, Finite(band.ClearShare),
        [.. band.Lots.Select(Lot)],
        [.. band.Pairs.Select(pair => Pair(pair, question))]);

    private static SummaryBandLeftOut LeftOut(BandLeftOut band) => new(
        band.Name, band.LimitsDiffer ? "limits-differ" : "no-frequency",
        [.. band.Of.Select(of => new SummaryBandLimits(of.Campaign, of.Limits.Start.Value, of.Limits.Stop.Value))]);

    private static ImmutableArray<SummaryPairPoint> Points(LotHistory history, int f) =>
        [.. history.Pairs.Select((pair, place) => Point(history, pair, place, pair.Points[f]))];

    private static SummaryPairPoint Point(LotHistory history, HistoryPair pair, int place, HistoryPoint at) => new(
        place, double.IsFinite(at.DifferenceDb) ? Estimate.Of(at.DifferenceDb, at.Interval(history.Question.Confidence)) : null,
        P: Finite(at.Probability),
        PAdjusted: Finite(at.Adjusted),
        history.DifferAt(pair, at), at.CappedFirst, at.CappedSecond);
}
