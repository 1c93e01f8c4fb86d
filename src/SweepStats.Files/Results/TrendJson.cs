using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Statistics;
using SweepStats.Trends;
using SweepStats.Verdicts;

namespace SweepStats.Files.Results;

/// <summary>
/// The trend along an ordered factor as JSON; decibels unless the name says otherwise, null where there is no figure.
/// </summary>
internal static class TrendJson
{
    /// <summary>Writes the member "trend" into an object that is open; nothing where no factor is named.</summary>
    public static void Write(Utf8JsonWriter json, FactorTrend? trend, Verdict verdict)
    {
        if (trend is null)
        {
            return;
        }

        json.WriteStartObject("trend");
        json.WriteString("ordered_by", trend.Factor);
        json.WriteNumber("confidence", trend.Confidence.Level);
        json.WriteNumber("specimens", trend.Specimens.Length);
        SummaryJson.Word(json, "lacking", trend.Lack switch
        {
            TrendLack.Values => "values",
            TrendLack.Specimens => "specimens",
            _ => null
        });
        Requirement(json, trend.Requirement);
        json.WriteStartArray("values");
        foreach (FactorGroup group in trend.Groups)
        {
            json.WriteStartObject();
            json.WriteNumber("value", group.Value);
            json.WriteNumber("specimens", group.Specimens);
            SummaryPlan.Number(json, "mean_db", group.MeanDb);
            SummaryJson.Word(json, "outcome",
                SummaryJson.Outcome(trend.Requirement is null ? null : verdict.Relied(group.Outcome)));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("bands");
        foreach (TrendBand band in trend.Bands)
        {
            Band(json, band);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>What a frequency is held against the requirement by.</summary>
    public static string Basis(TrendBasis basis) => basis switch
    {
        TrendBasis.Line => "line",
        TrendBasis.Groups => "groups",
        _ => "nothing",
    };

    private static void Requirement(Utf8JsonWriter json, TrendRequirement? asked)
    {
        if (asked is null)
        {
            json.WriteNull("requirement");
            return;
        }

        json.WriteStartObject("requirement");
        json.WriteNumber("one_sided_confidence", asked.Rule.Level.Level);
        json.WriteString("holds", "mean-of-specimens-at-every-frequency");
        SummaryPlan.Number(json, "met_up_to", asked.MetUpTo);
        SummaryPlan.Number(json, "not_met_from", asked.NotMetFrom);
        json.WriteNumber("frequencies", asked.Frequencies);
        json.WriteNumber("by_groups", asked.ByGroups);
        json.WriteNumber("hidden", asked.Hidden);
        SummaryPlan.Number(json, "decided_at_hz", asked.DecidedAt?.Value);
        SummaryJson.Word(
            json, "obstacle",
            asked.Obstacle == TrendObstacle.None ? null : JsonNamingPolicy.KebabCaseLower.ConvertName(asked.Obstacle.ToString()));
        SummaryJson.Texts(json, "overturned_by", asked.OverturnedBy);
        json.WriteEndObject();
    }

    private static void Band(Utf8JsonWriter json, TrendBand band)
    {
        json.WriteStartObject();
        SummaryJson.Word(json, "name", band.Name);
        json.WriteNumber("start_hz", band.Band.Start.Value);
        json.WriteNumber("stop_hz", band.Band.Stop.Value);
        SummaryPlan.Number(json, "clear_share", band.ClearShare);
        Interval? interval = band.WithinLots?.IntervalDb ?? band.Line?.SlopeIntervalDb;
        double? slope = band.WithinLots?.SlopeDb ?? band.Line?.SlopeDb;
        SummaryFigures.Figure(json, "slope_db", slope is null ? null : new BandFigure(slope, interval?.Low, interval?.High));
        json.WriteBoolean("within_lots", band.WithinLots is not null);
        SummaryPlan.Number(json, "sd_db", band.Line?.ResidualDb);
        SummaryPlan.Number(json, "p_straight", band.Line?.StraightProbability);
        json.WriteBoolean("straight", band.IsStraight);
        SummaryPlan.Number(json, "p_lots_apart", band.LotsApartProbability);
        json.WriteEndObject();
    }
}
