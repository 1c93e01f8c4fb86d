using System.Text.Json;
using SweepStats.Choice;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>Which specimen is best, as JSON; decibels unless the name says otherwise, null where there is no figure.</summary>
public static class ChoiceJson
{
    /// <summary>Writes the members of an object that is open.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="choice">The ranking.</param>
    /// <param name="confidence">Level of its groups and intervals, and one-sided of what is claimed at every frequency.</param>
    public static void Write(Utf8JsonWriter json, SpecimenChoice choice, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(choice);
        json.WriteNumber("confidence", confidence.Level);
        json.WriteString("repeats", choice.ByPlacement ? "placements" : "sweeps");
        json.WriteStartArray("not_ranked_because");
        foreach (string reason in choice.NotRankedBecause)
        {
            json.WriteStringValue(reason);
        }

        json.WriteEndArray();
        json.WriteStartArray("bands");
        foreach (BandRanking band in choice.Bands)
        {
            Band(json, band, choice.MayRank);
        }

        json.WriteEndArray();
        json.WriteStartArray("properties");
        foreach (SpecimenProperty property in choice.Properties)
        {
            json.WriteStartObject();
            json.WriteString("lot", property.Specimen.Lot);
            json.WriteString("specimen", property.Specimen.Specimen);
            json.WriteString("name", property.Name);
            json.WriteString("text", property.Text);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("dominated");
        foreach (DominatedSpecimen dominated in choice.Dominated)
        {
            json.WriteStartObject();
            json.WriteString("specimen", dominated.Name.ToString());
            json.WriteString("by", dominated.By.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // Where nobody may be ranked the order is no ranking.
    private static void Band(Utf8JsonWriter json, BandRanking band, bool ranked)
    {
        json.WriteStartObject();
        SummaryJson.Word(json, "name", band.Name);
        json.WriteNumber("start_hz", band.Band.Start.Value);
        json.WriteNumber("stop_hz", band.Band.Stop.Value);
        json.WriteNumber("points", band.PointCount);
        json.WriteNumber("left_out", band.LeftOut);
        json.WriteNumber("capped_left_out", band.CappedLeftOut);
        json.WriteStartArray("ranking");
        foreach (RankedSpecimen specimen in band.Ranking)
        {
            Specimen(json, specimen, ranked);
            SummaryJson.PassOn(json);
        }

        json.WriteEndArray();
        if (band.Yardstick is { } yardstick)
        {
            json.WritePropertyName("yardstick");
            Specimen(json, yardstick, ranked);
        }
        else
        {
            json.WriteNull("yardstick");
        }

        json.WriteEndObject();
    }

    private static void Specimen(Utf8JsonWriter json, RankedSpecimen specimen, bool ranked)
    {
        json.WriteStartObject();
        json.WriteString("lot", specimen.Name.Lot);
        json.WriteString("specimen", specimen.Name.Specimen);
        SummaryPlan.Number(json, "rank", ranked && specimen.Rank > 0 ? specimen.Rank : null);
        SummaryPlan.Number(json, "group", ranked ? specimen.Group : null);
        SummaryFigures.Figure(json, "mean_db", specimen.MeanDb);
        SummaryPlan.Number(json, "at_least_db", specimen.AtLeast?.Value);
        json.WriteNumber("capped_points", specimen.CappedCount);
        json.WriteBoolean("known_from_below_only", specimen.Open);
        SummaryPlan.Number(json, "probability_best_low", specimen.ProbabilityBest?.Low);
        SummaryPlan.Number(json, "probability_best_high", specimen.ProbabilityBest?.High);
        SummaryFigures.Figure(json, "below_yardstick_db", specimen.BelowYardstickDb);
        json.WriteEndObject();
    }
}
