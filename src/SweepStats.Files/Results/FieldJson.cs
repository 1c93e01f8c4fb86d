using System.Text.Json;
using SweepStats.Fields;
using SweepStats.Quantities;

namespace SweepStats.Files.Results;

/// <summary>What is left of fields and pulses, as members of a JSON object; names as in <see cref="FieldCsv"/>.</summary>
public static class FieldJson
{
    /// <summary>Writes the members.</summary>
    public static void Write(Utf8JsonWriter json, AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(result);
        SummaryPlan.Number(json, "confidence", result.Plan.Confidence.Level);
        Pulse(json, result);
        json.WriteStartArray("specimens");
        for (int i = 0; i < result.Pulses.Length; i++)
        {
            json.WriteStartObject();
            json.WriteString("lot", result.Pulses[i].Name.Lot);
            json.WriteString("specimen", result.Pulses[i].Name.Specimen);
            Steady(json, result, i);
            Left(json, result.Pulses[i]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Layers(json, result);
    }

    private static void Layers(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteStartArray("layers");
        foreach (LayerStep step in result.Layers)
        {
            json.WriteStartObject();
            json.WriteString("lot", step.Lot);
            json.WriteNumber("from", step.From);
            json.WriteNumber("to", step.To);
            SummaryPlan.Number(json, "before_db", step.BeforeDb);
            SummaryPlan.Number(json, "added_db", step.AddedDb.Value);
            SummaryPlan.Number(json, "added_low_db", step.AddedDb.Low);
            SummaryPlan.Number(json, "added_high_db", step.AddedDb.High);
            json.WriteNumber("points", step.PointCount);
            json.WriteNumber("left_out", step.LeftOut);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Pulse(Utf8JsonWriter json, AnalysisResult result)
    {
        DoubleExponential pulse = result.Plan.Pulse.Pulse;
        json.WriteStartObject("pulse");
        SummaryPlan.Number(json, "peak_v_per_m", pulse.PeakVoltsPerMetre);
        SummaryPlan.Number(json, "alpha_per_s", pulse.DecayPerSecond);
        SummaryPlan.Number(json, "beta_per_s", pulse.RisePerSecond);
        SummaryPlan.Number(json, "energy_j_per_m2", pulse.JoulesPerSquareMetre);
        SummaryPlan.Number(json, "energy_in_band", pulse.EnergyShareIn(result.Campaign.Grid));
        json.WriteString("outside", FieldWords.Of(result.Plan.Pulse.Outside));
        json.WriteEndObject();
    }

    private static void Steady(Utf8JsonWriter json, AnalysisResult result, int i)
    {
        if (result.Plan.Field is null)
        {
            return;
        }

        SummaryPlan.Number(json, "steady_at_most_v_per_m", result.Fields[i].VoltsPerMetre);
        if (result.Needed.IsEmpty)
        {
            return;
        }

        SummaryPlan.Number(json, "needed_db", result.Needed[i].Needed.Value);
        json.WriteStartArray("needed_shown_hz");
        foreach (FrequencyBand band in result.Needed[i].Shown)
        {
            json.WriteStartArray();
            json.WriteNumberValue(band.Start.Value);
            json.WriteNumberValue(band.Stop.Value);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Left(Utf8JsonWriter json, ResidualPulse pulse)
    {
        SummaryJson.Word(json, "no_claim", FieldWords.Of(pulse.Silence));
        json.WriteNumber("bound_points", pulse.BoundCount);
        json.WriteNumber("unknown_points", pulse.UnknownCount);
        json.WriteStartArray("pulse_left");
        foreach (PulseLeft left in pulse.Assumed)
        {
            json.WriteStartObject();
            json.WriteString("outside", FieldWords.Of(left.Outside));
            SummaryPlan.Number(json, "peak_v_per_m", left.Estimate?.PeakVoltsPerMetre);
            SummaryPlan.Number(json, "peak_low_v_per_m", left.PeakLimits?.Low);
            SummaryPlan.Number(json, "peak_high_v_per_m", left.PeakLimits?.High);
            SummaryPlan.Number(json, "peak_at_most_v_per_m", left.PeakAtMost);
            SummaryPlan.Number(json, "peak_measured_phase_v_per_m", left.PeakWithMeasuredPhase);
            SummaryPlan.Number(json, "rise_s", left.Estimate?.RiseSeconds);
            SummaryPlan.Number(json, "width_s", left.Estimate?.WidthSeconds);
            SummaryPlan.Number(json, "energy_j_per_m2", left.Estimate?.JoulesPerSquareMetre);
            SummaryPlan.Number(json, "energy_at_most_j_per_m2", left.EnergyAtMost);
            SummaryJson.Word(json, "no_claim", FieldWords.Of(left.Silence));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
