using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Fields;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Files.Results;

/// <summary>What an analysis found of floor and specimens, as summary.json tells it.</summary>
internal static class SummaryFigures
{
    public static void Floor(Utf8JsonWriter json, NoiseFloor? found) => json.Object("floor", found, floor =>
    {
        json.WriteString("source", floor.Source.ToString().ToLowerInvariant());
        json.WriteNumber("sweeps", floor.SweepCount);
        json.Number("reading_deviation_db", floor.ReadingDeviationDb);
        json.Number("sweep_offset_deviation_db", floor.SweepOffsetDeviationDb);
        json.Objects("noise", floor.Noise, noise =>
        {
            // Noise without scatter has endless looks, which JSON cannot write.
            json.Number("looks", noise.Looks);
            json.Number("log_averages", noise.LogAverages);
        });
    });

    public static void Specimens(Utf8JsonWriter json, AnalysisResult result)
    {
        Verdict relied = result.Verdict.AsRelied();
        json.Objects("specimens", result.Curves.Zip(result.Bands), specimen =>
        {
            SpecimenName name = specimen.First.Name;
            Swept(json, specimen.First);
            Band(json, specimen.Second, result.Plan.Confidence);
            json.Figure("share_meeting", relied.ShareMeeting(specimen.Second));
            Field(json, result.Fields.FirstOrDefault(f => f.Name == name));
            json.Object("requirement", relied.Specimens.FirstOrDefault(o => o.Name == name), outcome => Stands(json, outcome));
            json.WriteNumber("capped_points", specimen.Second.CappedCount);
            json.WriteNumber("points", specimen.Second.PointCount);
        });
    }

    private static void Swept(Utf8JsonWriter json, ShieldingCurve curve)
    {
        json.WriteString("lot", curve.Name.Lot);
        json.WriteString("specimen", curve.Name.Specimen);
        json.WriteNumber("sweeps", curve.SweepCount);
        json.Number("placements", curve.PlacementCount);
    }

    private static void Band(Utf8JsonWriter json, BandStatement band, Confidence confidence)
    {
        json.Band(band.Band);
        json.WriteNumber("confidence", confidence.Level);
        json.Number("at_least_db", band.AtLeast?.Value);
        json.Number("weakest_hz", band.WeakestAt?.Value);
        json.Figure("mean_db", band.MeanDb);
        json.Figure("p10_db", band.TenthPercentileDb);
    }

    // Only where a field is stated: a summary without one is what it was before.
    private static void Field(Utf8JsonWriter json, ResidualField? field)
    {
        if (field is null)
        {
            return;
        }

        json.Object("field", () =>
        {
            json.Number("at_most_v_per_m", field.VoltsPerMetre);
            json.Number("shielding_db", field.Shielding?.Value);
            json.WriteString("tolerable", field.IsTolerable switch { true => "within", false => "not-shown", _ => null });
            json.WriteString("no_claim", FieldWords.Of(field.Silence));
        });
    }

    private static void Stands(Utf8JsonWriter json, SpecimenOutcome specimen)
    {
        json.WriteString("outcome", SummaryJson.Outcome(specimen.Outcome));
        foreach (RequirementOutcome outcome in Enum.GetValues<RequirementOutcome>())
        {
            json.WriteNumber(SummaryJson.Outcome(outcome)!, specimen.Count(outcome));
        }

        FrequencyDecision? least = specimen.LeastProbable;
        json.Number("least_probability", least?.Probability?.Least);
        json.Number("least_probability_at_most", least?.Probability?.Most);
        json.Number("least_probable_hz", least?.At.Value);
    }
}
