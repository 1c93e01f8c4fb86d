using System.Text.Json;
using SweepStats.Files.Summaries;
using SweepStats.Lots;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Results;

/// <summary>How lots compare, as JSON; decibels unless the name says otherwise, null where there is no figure.</summary>
public static class LotsJson
{
    /// <summary>
    /// Writes the trend along an ordered factor, where there is one, and how lots compare: the members of an object that is open.
    /// </summary>
    public static void Write(Utf8JsonWriter json, AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(result);
        if (TrendJson.Of(result.Trend, result.Verdict) is { } trend)
        {
            json.WritePropertyName("trend");
            JsonSerializer.Serialize(json, trend, SummaryNames.Printed.SummaryTrend);
        }

        Lots(json, result);
    }

    /// <summary>Writes how lots compare: the members of an object that is open.</summary>
    public static void Lots(Utf8JsonWriter json, AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(result);
        json.MembersOf(Of(result), SummaryNames.Printed.SummaryLots);
    }

    /// <summary>What is written.</summary>
    // Under a fault, or what misleads, no lot is foremost.
    internal static SummaryLots Of(AnalysisResult result) => new(
        [.. result.Lots.Stretches.Select(Stretch)],
        [.. result.Lots.Bands.Select(band => Band(band, result.Lots.Question, result.MayPrefer ? band.Foremost : []))]);

    internal static ImmutableArray<SummaryChart> OverTime(ImmutableArray<ControlChart> charts) => [.. charts.Select(chart =>
        new SummaryChart(JsonNamingPolicy.KebabCaseLower.ConvertName(chart.Figure.ToString()), chart.CentreDb,
            [.. chart.Points.Select(Point)]))];

    private static SummaryStretch Stretch(LotStretch stretch) => new(
        stretch.Band.Start.Value, stretch.Band.Stop.Value, stretch.Frequencies, stretch.Lot,
        stretch.Lot is null ? null : Finite(stretch.ApartDb), stretch.AtLeast);

    private static SummaryLotBand Band(LotBand band, LotQuestion question, ImmutableArray<string> foremost) => new(
        band.Name, band.Band.Start.Value, band.Band.Stop.Value, band.ClearShare, question.Confidence.Level,
        P: Finite(band.Probability),
        SharedErrorDb: Finite(band.SharedErrorDb),
        [.. band.Lots.Select(Lot)],
        [.. band.Pairs.Select(pair => Pair(pair, question))],
        Scatter(band.Scatter),
        Finite(band.IntraclassCorrelation),
        SpecimenStanding: Standing(band.SpecimenStanding),
        LotStanding: Standing(band.LotStanding),
        OverTime(band.OverTime),
        foremost);

    // The interval between lots is by the scatter of the specimens alone.
    private static SummaryLot Lot(LotSummary lot) => new(
        lot.Lot, lot.Specimens, Estimate.Of(lot.MeanDb, lot.MeanIntervalDb),
        PromisedDb: Finite(lot.ToleranceLimitDb),
        PromisedRankDb: Finite(lot.RankLimitDb),
        PlainMeanDb: Finite(lot.PlainMeanDb),
        BetweenLotsLowDb: Finite(lot.BetweenLotsIntervalDb?.Low),
        BetweenLotsHighDb: Finite(lot.BetweenLotsIntervalDb?.High),
        PromisedBetweenLotsDb: Finite(lot.BetweenLotsLimitDb));

    private static SummaryLotPair Pair(LotPair pair, LotQuestion question) => new(
        pair.First, pair.Second, Estimate.Of(pair.Tested.Difference, pair.Tested.Interval(question.FalseAlarm)),
        DifferenceLevel: Math.Round(1 - (2 * question.FalseAlarm), 12),
        WithinDb: question.MarginDb,
        PNotWithin: Finite(pair.Tested.Probability));

    private static SummaryScatter Scatter(ImmutableArray<LevelDeviation> levels)
    {
        double? Of(VarianceLevel level) =>
            levels.Where(of => of.Level == level).Select(of => (double?)of.DeviationDb).FirstOrDefault();
        return new()
        {
            Lot = Of(VarianceLevel.Lot),
            Specimen = Of(VarianceLevel.Specimen),
            Placement = Of(VarianceLevel.Placement),
            Sweep = Of(VarianceLevel.Sweep),
        };
    }

    private static SummaryStanding? Standing(GroupStanding? standing) => standing is null ? null : new(
        standing.RepeatabilityDb, standing.ReproducibilityDb, Critical(standing.CriticalH)!.Value,
        [.. standing.Members.Select(m => new SummaryMember(m.Name, Finite(m.H), Finite(m.K), Critical(m.CriticalK)))],
        new(standing.Cochran.Statistic, standing.Cochran.Name, standing.Cochran.Probability),
        new(standing.Grubbs.Statistic, standing.Grubbs.Name, standing.Grubbs.Probability));

    // None for a single value.
    private static ImmutableArray<double>? Critical(ConsistencyLimits values) =>
        double.IsFinite(values.Straggler) ? [values.Straggler, values.Outlier] : null;

    private static SummaryChartPoint Point(ControlPoint point) => new(
        point.Label, point.TakenAt is { } time ? SummaryJson.WholeSeconds(time) : null, point.Value, point.Low, point.High,
        point.Outside);
}
