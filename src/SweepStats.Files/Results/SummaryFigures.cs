using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Fields;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Verdicts;

namespace SweepStats.Files.Results;

/// <summary>What an analysis found of floor and specimens, as summary.json tells it.</summary>
internal static class SummaryFigures
{
    public static void Floor(Utf8JsonWriter json, NoiseFloor? floor)
    {
        if (floor is null)
        {
            json.WriteNull("floor");
            return;
        }

        json.WriteStartObject("floor");
        json.WriteString("source", floor.Source.ToString().ToLowerInvariant());
        json.WriteNumber("sweeps", floor.SweepCount);
        SummaryPlan.Number(json, "reading_deviation_db", floor.ReadingDeviationDb);
        SummaryPlan.Number(json, "sweep_offset_deviation_db", floor.SweepOffsetDeviationDb);
        json.WriteStartArray("noise");
        foreach (DetectorNoise noise in floor.Noise)
        {
            json.WriteStartObject();
            // Noise without scatter has endless looks, which JSON cannot write.
            SummaryPlan.Number(json, "looks", noise.Looks);
            SummaryPlan.Number(json, "log_averages", noise.LogAverages);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Specimens(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteStartArray("specimens");
        Verdict relied = result.Verdict.AsRelied();
        foreach ((ShieldingCurve curve, BandStatement band) in result.Curves.Zip(result.Bands))
        {
            json.WriteStartObject();
            json.WriteString("lot", curve.Name.Lot);
            json.WriteString("specimen", curve.Name.Specimen);
            json.WriteNumber("sweeps", curve.SweepCount);
            SummaryPlan.Number(json, "placements", curve.PlacementCount);
            SummaryPlan.Number(json, "start_hz", band.Band.Start.Value);
            SummaryPlan.Number(json, "stop_hz", band.Band.Stop.Value);
            json.WriteNumber("confidence", result.Plan.Confidence.Level);
            SummaryPlan.Number(json, "at_least_db", band.AtLeast?.Value);
            SummaryPlan.Number(json, "weakest_hz", band.WeakestAt?.Value);
            Figure(json, "mean_db", band.MeanDb);
            Figure(json, "p10_db", band.TenthPercentileDb);
            Figure(json, "share_meeting", relied.ShareMeeting(band));
            Field(json, result.Fields.FirstOrDefault(f => f.Name == curve.Name));
            Stands(json, relied.Specimens.FirstOrDefault(o => o.Name == curve.Name));
            json.WriteNumber("capped_points", band.CappedCount);
            json.WriteNumber("points", band.PointCount);
            json.WriteEndObject();
            SummaryJson.PassOn(json);
        }

        json.WriteEndArray();
    }

    // Only where a field is stated: a summary without one is what it was before.
    private static void Field(Utf8JsonWriter json, ResidualField? field)
    {
        if (field is null)
        {
            return;
        }

        json.WriteStartObject("field");
        SummaryPlan.Number(json, "at_most_v_per_m", field.VoltsPerMetre);
        SummaryPlan.Number(json, "shielding_db", field.Shielding?.Value);
        SummaryJson.Word(json, "tolerable", field.IsTolerable switch { true => "within", false => "not-shown", _ => null });
        SummaryJson.Word(json, "no_claim", FieldWords.Of(field.Silence));
        json.WriteEndObject();
    }

    private static void Stands(Utf8JsonWriter json, SpecimenOutcome? specimen)
    {
        if (specimen is null)
        {
            json.WriteNull("requirement");
            return;
        }

        json.WriteStartObject("requirement");
        json.WriteString("outcome", SummaryJson.Outcome(specimen.Outcome));
        foreach (RequirementOutcome outcome in Enum.GetValues<RequirementOutcome>())
        {
            json.WriteNumber(SummaryJson.Outcome(outcome)!, specimen.Count(outcome));
        }

        FrequencyDecision? least = specimen.LeastProbable;
        SummaryPlan.Number(json, "least_probability", least?.Probability?.Least);
        SummaryPlan.Number(json, "least_probability_at_most", least?.Probability?.Most);
        SummaryPlan.Number(json, "least_probable_hz", least?.At.Value);
        json.WriteEndObject();
    }

    /// <summary>A figure with its limits; null where there is none.</summary>
    public static void Figure(Utf8JsonWriter json, string name, BandFigure? figure)
    {
        if (figure is not { } stated)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        SummaryPlan.Number(json, "value", stated.Value);
        SummaryPlan.Number(json, "low", stated.Low);
        SummaryPlan.Number(json, "high", stated.High);
        json.WriteEndObject();
    }
}
