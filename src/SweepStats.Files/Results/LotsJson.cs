using System.Collections.Immutable;
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
        json.WriteStartArray("stretches");
        foreach (LotStretch stretch in lots.Stretches)
        {
            json.WriteStartObject();
            json.WriteNumber("start_hz", stretch.Band.Start.Value);
            json.WriteNumber("stop_hz", stretch.Band.Stop.Value);
            json.WriteNumber("frequencies", stretch.Frequencies);
            SummaryJson.Word(json, "lot", stretch.Lot);
            SummaryPlan.Number(json, "apart_db", stretch.Lot is null ? null : stretch.ApartDb);
            json.WriteBoolean("at_least", stretch.AtLeast);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("bands");
        foreach (LotBand band in lots.Bands)
        {
            json.WriteStartObject();
            Band(json, band, lots.Question);
            Foremost(json, result.MayPrefer ? band.Foremost : []);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Band(Utf8JsonWriter json, LotBand band, LotQuestion question)
    {
        SummaryJson.Word(json, "name", band.Name);
        json.WriteNumber("start_hz", band.Band.Start.Value);
        json.WriteNumber("stop_hz", band.Band.Stop.Value);
        SummaryPlan.Number(json, "clear_share", band.ClearShare);
        json.WriteNumber("confidence", question.Confidence.Level);
        SummaryPlan.Number(json, "p", band.Probability);
        SummaryPlan.Number(json, "shared_error_db", band.SharedErrorDb);
        json.WriteStartArray("lots");
        foreach (LotSummary lot in band.Lots)
        {
            json.WriteStartObject();
            Lot(json, lot);
            BetweenLots(json, lot);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("pairs");
        foreach (LotPair pair in band.Pairs)
        {
            json.WriteStartObject();
            json.WriteString("first", pair.First);
            json.WriteString("second", pair.Second);
            Tested(json, pair.Tested, question);
            json.WriteEndObject();
            SummaryJson.PassOn(json);
        }

        json.WriteEndArray();
        json.WriteStartObject("scatter_db");
        foreach (LevelDeviation level in band.Scatter)
        {
            json.WriteNumber(level.Level.ToString().ToLowerInvariant(), level.DeviationDb);
        }

        json.WriteEndObject();
        SummaryPlan.Number(json, "intraclass_correlation", band.IntraclassCorrelation);
        Standing(json, "specimen_standing", band.SpecimenStanding);
        Standing(json, "lot_standing", band.LotStanding);
        OverTime(json, band.OverTime);
    }

    // Under a fault, or what misleads, none.
    private static void Foremost(Utf8JsonWriter json, ImmutableArray<string> lots)
    {
        json.WriteStartArray("foremost");
        foreach (string lot in lots)
        {
            json.WriteStringValue(lot);
        }

        json.WriteEndArray();
    }

    internal static void Lot(Utf8JsonWriter json, LotSummary lot)
    {
        json.WriteString("lot", lot.Lot);
        json.WriteNumber("specimens", lot.Specimens);
        SummaryFigures.Figure(json, "mean_db", new BandFigure(lot.MeanDb, lot.MeanIntervalDb?.Low, lot.MeanIntervalDb?.High));
        SummaryPlan.Number(json, "promised_db", lot.ToleranceLimitDb);
        SummaryPlan.Number(json, "promised_rank_db", lot.RankLimitDb);
        SummaryPlan.Number(json, "plain_mean_db", lot.PlainMeanDb);
    }

    // By the scatter of the specimens alone.
    private static void BetweenLots(Utf8JsonWriter json, LotSummary lot)
    {
        SummaryPlan.Number(json, "between_lots_low_db", lot.BetweenLotsIntervalDb?.Low);
        SummaryPlan.Number(json, "between_lots_high_db", lot.BetweenLotsIntervalDb?.High);
        SummaryPlan.Number(json, "promised_between_lots_db", lot.BetweenLotsLimitDb);
    }

    private static void Tested(Utf8JsonWriter json, Equivalence? tested, LotQuestion question)
    {
        Interval? interval = tested?.Interval(question.FalseAlarm);
        SummaryFigures.Figure(json, "difference_db",
            tested is null ? null : new BandFigure(tested.Difference, interval?.Low, interval?.High));
        SummaryPlan.Number(json, "difference_level", Math.Round(1 - (2 * question.FalseAlarm), 12));
        SummaryPlan.Number(json, "within_db", question.MarginDb);
        SummaryPlan.Number(json, "p_not_within", tested?.Probability);
    }

    internal static void OverTime(Utf8JsonWriter json, ImmutableArray<ControlChart> charts)
    {
        json.WriteStartArray("over_time");
        foreach (ControlChart chart in charts)
        {
            json.WriteStartObject();
            json.WriteString("figure", JsonNamingPolicy.KebabCaseLower.ConvertName(chart.Figure.ToString()));
            SummaryPlan.Number(json, "centre_db", chart.CentreDb);
            json.WriteStartArray("points");
            foreach (ControlPoint point in chart.Points)
            {
                json.WriteStartObject();
                json.WriteString("label", point.Label);
                SummaryJson.Word(json, "taken_at",
                    point.TakenAt?.ToString("yyyy-MM-ddTHH:mm:ssK", System.Globalization.CultureInfo.InvariantCulture));
                SummaryPlan.Number(json, "value_db", point.Value);
                SummaryPlan.Number(json, "low_db", point.Low);
                SummaryPlan.Number(json, "high_db", point.High);
                json.WriteBoolean("outside", point.Outside);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Standing(Utf8JsonWriter json, string name, GroupStanding? standing)
    {
        if (standing is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        SummaryPlan.Number(json, "repeatability_db", standing.RepeatabilityDb);
        SummaryPlan.Number(json, "reproducibility_db", standing.ReproducibilityDb);
        Critical(json, "h_critical", standing.CriticalH);
        json.WriteStartArray("members");
        foreach (GroupMember member in standing.Members)
        {
            json.WriteStartObject();
            json.WriteString("name", member.Name);
            SummaryPlan.Number(json, "h", member.H);
            SummaryPlan.Number(json, "k", member.K);
            Critical(json, "k_critical", member.CriticalK);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("cochran");
        SummaryPlan.Number(json, "c", standing.Cochran.Statistic);
        json.WriteString("name", standing.Cochran.Name);
        SummaryPlan.Number(json, "p", standing.Cochran.Probability);
        json.WriteEndObject();
        json.WriteStartObject("grubbs");
        SummaryPlan.Number(json, "g", standing.Grubbs.Statistic);
        json.WriteString("name", standing.Grubbs.Name);
        SummaryPlan.Number(json, "p", standing.Grubbs.Probability);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Critical(Utf8JsonWriter json, string name, ConsistencyLimits values)
    {
        if (!double.IsFinite(values.Straggler))
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartArray(name);
        json.WriteNumberValue(values.Straggler);
        json.WriteNumberValue(values.Outlier);
        json.WriteEndArray();
    }
}
