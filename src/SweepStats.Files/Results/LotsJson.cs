using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Statistics;

namespace SweepStats.Files.Results;

/// <summary>How lots compare, as JSON; decibels unless the name says otherwise, null where there is no figure.</summary>
public static class LotsJson
{
    /// <summary>
    /// Writes the trend along an ordered factor, where there is one, and how lots compare: the members of an object that is open.
    /// </summary>
    public static void Write(Utf8JsonWriter json, AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        TrendJson.Write(json, result.Trend, result.Verdict);
        Lots(json, result);
    }

    /// <summary>Writes how lots compare: the members of an object that is open.</summary>
    public static void Lots(Utf8JsonWriter json, AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(result);
        LotComparison lots = result.Lots;
        json.Objects("stretches", lots.Stretches, stretch =>
        {
            json.Band(stretch.Band);
            json.WriteNumber("frequencies", stretch.Frequencies);
            json.WriteString("lot", stretch.Lot);
            json.Number("apart_db", stretch.Lot is null ? null : stretch.ApartDb);
            json.WriteBoolean("at_least", stretch.AtLeast);
        });
        json.Objects("bands", lots.Bands, band =>
        {
            Band(json, band, lots.Question);
            // Under a fault, or what misleads, none.
            json.Texts("foremost", result.MayPrefer ? band.Foremost : []);
        });
    }

    private static void Band(Utf8JsonWriter json, LotBand band, LotQuestion question)
    {
        json.WriteString("name", band.Name);
        json.Band(band.Band);
        json.Number("clear_share", band.ClearShare);
        json.WriteNumber("confidence", question.Confidence.Level);
        json.Number("p", band.Probability);
        json.Number("shared_error_db", band.SharedErrorDb);
        json.Objects("lots", band.Lots, lot =>
        {
            Lot(json, lot);
            BetweenLots(json, lot);
        });
        json.Objects("pairs", band.Pairs, pair =>
        {
            json.WriteString("first", pair.First);
            json.WriteString("second", pair.Second);
            Tested(json, pair.Tested, question);
        });
        Scatter(json, band);
        json.Object("specimen_standing", band.SpecimenStanding, standing => Standing(json, standing));
        json.Object("lot_standing", band.LotStanding, standing => Standing(json, standing));
        OverTime(json, band.OverTime);
    }

    private static void Scatter(Utf8JsonWriter json, LotBand band)
    {
        json.Object("scatter_db", () =>
        {
            foreach (LevelDeviation level in band.Scatter)
            {
                json.WriteNumber(level.Level.ToString().ToLowerInvariant(), level.DeviationDb);
            }
        });
        json.Number("intraclass_correlation", band.IntraclassCorrelation);
    }

    internal static void Lot(Utf8JsonWriter json, LotSummary lot)
    {
        json.WriteString("lot", lot.Lot);
        json.WriteNumber("specimens", lot.Specimens);
        json.Figure("mean_db", new BandFigure(lot.MeanDb, lot.MeanIntervalDb?.Low, lot.MeanIntervalDb?.High));
        json.Number("promised_db", lot.ToleranceLimitDb);
        json.Number("promised_rank_db", lot.RankLimitDb);
        json.Number("plain_mean_db", lot.PlainMeanDb);
    }

    // By the scatter of the specimens alone.
    private static void BetweenLots(Utf8JsonWriter json, LotSummary lot)
    {
        json.Number("between_lots_low_db", lot.BetweenLotsIntervalDb?.Low);
        json.Number("between_lots_high_db", lot.BetweenLotsIntervalDb?.High);
        json.Number("promised_between_lots_db", lot.BetweenLotsLimitDb);
    }

    private static void Tested(Utf8JsonWriter json, Equivalence? tested, LotQuestion question)
    {
        Interval? interval = tested?.Interval(question.FalseAlarm);
        json.Figure("difference_db", tested is null ? null : new BandFigure(tested.Difference, interval?.Low, interval?.High));
        json.Number("difference_level", Math.Round(1 - (2 * question.FalseAlarm), 12));
        json.Number("within_db", question.MarginDb);
        json.Number("p_not_within", tested?.Probability);
    }

    internal static void OverTime(Utf8JsonWriter json, ImmutableArray<ControlChart> charts) =>
        json.Objects("over_time", charts, chart =>
    {
        json.WriteString("figure", JsonNamingPolicy.KebabCaseLower.ConvertName(chart.Figure.ToString()));
        json.Number("centre_db", chart.CentreDb);
        json.Objects("points", chart.Points, point =>
        {
            json.WriteString("label", point.Label);
            json.WriteString("taken_at", point.TakenAt?.ToString("yyyy-MM-ddTHH:mm:ssK", CultureInfo.InvariantCulture));
            json.Number("value_db", point.Value);
            json.Number("low_db", point.Low);
            json.Number("high_db", point.High);
            json.WriteBoolean("outside", point.Outside);
        });
    });

    private static void Standing(Utf8JsonWriter json, GroupStanding standing)
    {
        json.Number("repeatability_db", standing.RepeatabilityDb);
        json.Number("reproducibility_db", standing.ReproducibilityDb);
        Critical(json, "h_critical", standing.CriticalH);
        json.Objects("members", standing.Members, member =>
        {
            json.WriteString("name", member.Name);
            json.Number("h", member.H);
            json.Number("k", member.K);
            Critical(json, "k_critical", member.CriticalK);
        });
        json.Object("cochran", () =>
        {
            json.Number("c", standing.Cochran.Statistic);
            json.WriteString("name", standing.Cochran.Name);
            json.Number("p", standing.Cochran.Probability);
        });
        json.Object("grubbs", () =>
        {
            json.Number("g", standing.Grubbs.Statistic);
            json.WriteString("name", standing.Grubbs.Name);
            json.Number("p", standing.Grubbs.Probability);
        });
    }

    private static void Critical(Utf8JsonWriter json, string name, ConsistencyLimits values)
    {
        if (!double.IsFinite(values.Straggler))
        {
            json.WriteNull(name);
            return;
        }

        json.Numbers(name, [values.Straggler, values.Outlier]);
    }
}
