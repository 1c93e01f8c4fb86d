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
        if (trend is not null)
        {
            json.Object("trend", () => Trend(json, trend, verdict));
        }
    }

    private static void Trend(Utf8JsonWriter json, FactorTrend trend, Verdict verdict)
    {
        json.WriteString("ordered_by", trend.Factor);
        json.WriteNumber("confidence", trend.Confidence.Level);
        json.WriteNumber("specimens", trend.Specimens.Length);
        json.WriteString("lacking", trend.Lack switch
        {
            TrendLack.Values => "values",
            TrendLack.Specimens => "specimens",
            _ => null
        });
        json.Object("requirement", trend.Requirement, asked => Requirement(json, asked));
        json.Objects("values", trend.Groups, group =>
        {
            json.WriteNumber("value", group.Value);
            json.WriteNumber("specimens", group.Specimens);
            json.Number("mean_db", group.MeanDb);
            json.WriteString("outcome", SummaryJson.Outcome(trend.Requirement is null ? null : verdict.Relied(group.Outcome)));
        });
        json.Objects("bands", trend.Bands, band => Band(json, band));
    }

    /// <summary>What a frequency is held against the requirement by.</summary>
    public static string Basis(TrendBasis basis) => basis switch
    {
        TrendBasis.Line => "line",
        TrendBasis.Groups => "groups",
        _ => "nothing",
    };

    private static void Requirement(Utf8JsonWriter json, TrendRequirement asked)
    {
        json.WriteNumber("one_sided_confidence", asked.Rule.Level.Level);
        json.WriteString("holds", "mean-of-specimens-at-every-frequency");
        json.Number("met_up_to", asked.MetUpTo);
        json.Number("not_met_from", asked.NotMetFrom);
        json.WriteNumber("frequencies", asked.Frequencies);
        json.WriteNumber("by_groups", asked.ByGroups);
        json.WriteNumber("hidden", asked.Hidden);
        json.Number("decided_at_hz", asked.DecidedAt?.Value);
        json.WriteString("obstacle",
            asked.Obstacle == TrendObstacle.None ? null : JsonNamingPolicy.KebabCaseLower.ConvertName(asked.Obstacle.ToString()));
        json.Texts("overturned_by", asked.OverturnedBy);
    }

    private static void Band(Utf8JsonWriter json, TrendBand band)
    {
        json.WriteString("name", band.Name);
        json.Band(band.Band);
        json.Number("clear_share", band.ClearShare);
        Interval? interval = band.WithinLots?.IntervalDb ?? band.Line?.SlopeIntervalDb;
        double? slope = band.WithinLots?.SlopeDb ?? band.Line?.SlopeDb;
        json.Figure("slope_db", slope is null ? null : new BandFigure(slope, interval?.Low, interval?.High));
        json.WriteBoolean("within_lots", band.WithinLots is not null);
        json.Number("sd_db", band.Line?.ResidualDb);
        json.Number("p_straight", band.Line?.StraightProbability);
        json.WriteBoolean("straight", band.IsStraight);
        json.Number("p_lots_apart", band.LotsApartProbability);
    }
}
