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
        json.Number("confidence", result.Plan.Confidence.Level);
        Pulse(json, result);
        json.Objects("specimens", Enumerable.Range(0, result.Pulses.Length), i =>
        {
            json.WriteString("lot", result.Pulses[i].Name.Lot);
            json.WriteString("specimen", result.Pulses[i].Name.Specimen);
            Steady(json, result, i);
            Left(json, result.Pulses[i]);
        });
        Layers(json, result);
    }

    private static void Layers(Utf8JsonWriter json, AnalysisResult result) => json.Objects("layers", result.Layers, step =>
    {
        json.WriteString("lot", step.Lot);
        json.WriteNumber("from", step.From);
        json.WriteNumber("to", step.To);
        json.Number("before_db", step.BeforeDb);
        json.Number("added_db", step.AddedDb.Value);
        json.Number("added_low_db", step.AddedDb.Low);
        json.Number("added_high_db", step.AddedDb.High);
        json.WriteNumber("points", step.PointCount);
        json.WriteNumber("left_out", step.LeftOut);
    });

    private static void Pulse(Utf8JsonWriter json, AnalysisResult result)
    {
        DoubleExponential pulse = result.Plan.Pulse.Pulse;
        json.WriteStartObject("pulse");
        json.Number("peak_v_per_m", pulse.PeakVoltsPerMetre);
        json.Number("alpha_per_s", pulse.DecayPerSecond);
        json.Number("beta_per_s", pulse.RisePerSecond);
        json.Number("energy_j_per_m2", pulse.JoulesPerSquareMetre);
        json.Number("energy_in_band", pulse.EnergyShareIn(result.Campaign.Grid));
        json.WriteString("outside", FieldWords.Of(result.Plan.Pulse.Outside));
        json.WriteEndObject();
    }

    private static void Steady(Utf8JsonWriter json, AnalysisResult result, int i)
    {
        if (result.Plan.Field is null)
        {
            return;
        }

        json.Number("steady_at_most_v_per_m", result.Fields[i].VoltsPerMetre);
        if (result.Needed.IsEmpty)
        {
            return;
        }

        json.Number("needed_db", result.Needed[i].Needed.Value);
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
        json.WriteString("no_claim", FieldWords.Of(pulse.Silence));
        json.WriteNumber("bound_points", pulse.BoundCount);
        json.WriteNumber("unknown_points", pulse.UnknownCount);
        json.Objects("pulse_left", pulse.Assumed, left =>
        {
            json.WriteString("outside", FieldWords.Of(left.Outside));
            json.Number("peak_v_per_m", left.Estimate?.PeakVoltsPerMetre);
            json.Number("peak_low_v_per_m", left.PeakLimits?.Low);
            json.Number("peak_high_v_per_m", left.PeakLimits?.High);
            json.Number("peak_at_most_v_per_m", left.PeakAtMost);
            json.Number("peak_measured_phase_v_per_m", left.PeakWithMeasuredPhase);
            json.Number("rise_s", left.Estimate?.RiseSeconds);
            json.Number("width_s", left.Estimate?.WidthSeconds);
            json.Number("energy_j_per_m2", left.Estimate?.JoulesPerSquareMetre);
            json.Number("energy_at_most_j_per_m2", left.EnergyAtMost);
            json.WriteString("no_claim", FieldWords.Of(left.Silence));
        });
    }
}
