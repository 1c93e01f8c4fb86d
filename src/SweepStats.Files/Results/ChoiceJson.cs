using System.Text.Json;
using SweepStats.Choice;
using SweepStats.Statistics;

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
        json.Texts("not_ranked_because", choice.NotRankedBecause);
        json.Objects("bands", choice.Bands, band => Band(json, band, choice.MayRank));
        json.Objects("properties", choice.Properties, property =>
        {
            json.WriteString("lot", property.Specimen.Lot);
            json.WriteString("specimen", property.Specimen.Specimen);
            json.WriteString("name", property.Name);
            json.WriteString("text", property.Text);
        });
        json.Objects("dominated", choice.Dominated, dominated =>
        {
            json.WriteString("specimen", dominated.Name.ToString());
            json.WriteString("by", dominated.By.ToString());
        });
    }

    // Where nobody may be ranked the order is no ranking.
    private static void Band(Utf8JsonWriter json, BandRanking band, bool ranked)
    {
        json.WriteString("name", band.Name);
        json.Band(band.Band);
        json.WriteNumber("points", band.PointCount);
        json.WriteNumber("left_out", band.LeftOut);
        json.WriteNumber("capped_left_out", band.CappedLeftOut);
        json.Objects("ranking", band.Ranking, specimen => Specimen(json, specimen, ranked));
        json.Object("yardstick", band.Yardstick, specimen => Specimen(json, specimen, ranked));
    }

    private static void Specimen(Utf8JsonWriter json, RankedSpecimen specimen, bool ranked)
    {
        json.WriteString("lot", specimen.Name.Lot);
        json.WriteString("specimen", specimen.Name.Specimen);
        json.Number("rank", ranked && specimen.Rank > 0 ? specimen.Rank : null);
        json.Number("group", ranked ? specimen.Group : null);
        json.Figure("mean_db", specimen.MeanDb);
        json.Number("at_least_db", specimen.AtLeast?.Value);
        json.WriteNumber("capped_points", specimen.CappedCount);
        json.WriteBoolean("known_from_below_only", specimen.Open);
        json.Number("probability_best_low", specimen.ProbabilityBest?.Low);
        json.Number("probability_best_high", specimen.ProbabilityBest?.High);
        json.Figure("below_yardstick_db", specimen.BelowYardstickDb);
    }
}
