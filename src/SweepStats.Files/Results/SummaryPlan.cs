using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Files.Results;

/// <summary>The choices of an analysis, as summary.json tells them.</summary>
internal static class SummaryPlan
{
    public static void Write(Utf8JsonWriter json, AnalysisResult result)
    {
        AnalysisPlan plan = result.Plan;
        json.WriteStartObject("plan");
        Number(json, "confidence", plan.Confidence.Level);
        json.WriteString("averaging", plan.Averaging.ToString().ToLowerInvariant());
        json.WriteString("averaging_in_use", result.Averaging.Averaging.ToString().ToLowerInvariant());
        json.WriteString("averaging_source", result.Averaging.Source.ToString().ToLowerInvariant());
        json.WriteString("scale", result.Campaign.Scale.Symbol());
        Number(json, "start_hz", plan.Band?.Start.Value);
        Number(json, "stop_hz", plan.Band?.Stop.Value);
        Interpolated(json, plan);
        Asked(json, result);
        Number(json, "requirement_confidence", plan.Rule?.Level.Level);
        Number(json, "guard_band_db", plan.Rule?.GuardBand.Value);
        Number(json, "margin_db", plan.Margin.Value);
        Number(json, "declared_floor_db", plan.DeclaredFloorDb);
        FloorAndLeakage(json, plan);
        Number(json, "rbw_hz", plan.Setup.ResolutionBandwidthHz);
        Number(json, "attenuation_db", plan.Setup.AttenuationDb);
        Number(json, "source_dbm", plan.SourceDbm);
        Number(json, "max_input_dbm", plan.MaximumInputDbm);
        json.WriteStartArray("budget_frequencies_hz");
        foreach (Hertz frequency in plan.BudgetFrequencies)
        {
            json.WriteNumberValue(frequency.Value);
        }

        json.WriteEndArray();
        json.WriteStartArray("uncertainties");
        foreach (UncertaintyEntry entry in plan.Uncertainties)
        {
            Entry(json, entry);
        }

        json.WriteEndArray();
        Comparisons(json, plan);
        Field(json, plan.Field);
        json.WriteEndObject();
    }

    private static void Interpolated(Utf8JsonWriter json, AnalysisPlan plan)
    {
        if (plan.Interpolate)
        {
            json.WriteBoolean("interpolate", true);
        }
    }

    private static void Field(Utf8JsonWriter json, FieldThreat? threat)
    {
        if (threat is not null)
        {
            json.WriteStartObject("field");
            Number(json, "threat_v_per_m", threat.VoltsPerMetre);
            Number(json, "tolerable_v_per_m", threat.TolerableVoltsPerMetre);
            json.WriteEndObject();
        }
    }

    // Only where stated: a summary of a campaign that states none of them is what it was before they were known.
    private static void FloorAndLeakage(Utf8JsonWriter json, AnalysisPlan plan)
    {
        Taken(json, "floor_taken", plan.FloorTaking);
        Taken(json, "reference_taken", plan.ReferenceTaking);

        if (plan.FloorStabilityDb is { } stability)
        {
            json.WriteNumber("floor_stability_db", stability);
        }

        if (plan.SameLeakage)
        {
            json.WriteString("leakage", "same");
        }

        if (!plan.ShieldNothing.IsEmpty)
        {
            SummaryJson.Texts(json, "shields_nothing", [.. plan.ShieldNothing.Select(s => s.ToString())]);
        }
    }

    private static void Taken(Utf8JsonWriter json, string name, SweepTaking taking)
    {
        if (taking != SweepTaking.Unstated)
        {
            json.WriteString(name, taking == SweepTaking.Once ? "once" : "before-and-after");
        }
    }

    private static void Comparisons(Utf8JsonWriter json, AnalysisPlan plan)
    {
        json.WriteStartArray("named_bands");
        foreach (NamedBand named in plan.NamedBands)
        {
            json.WriteStartObject();
            json.WriteString("name", named.Name);
            Number(json, "start_hz", named.Band.Start.Value);
            Number(json, "stop_hz", named.Band.Stop.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("lots");
        Number(json, "same_within_db", plan.Lots.MarginDb);
        Number(json, "share", plan.Lots.Share);
        if (plan.Lots.OrderedBy is { } factor)
        {
            json.WriteString("ordered_by", factor);
        }

        json.WriteEndObject();
        json.WriteStartObject("choice");
        json.WriteString("yardstick", plan.Choice.Yardstick?.ToString());
        SummaryJson.Texts(json, "lower_is_better", plan.Choice.LowerIsBetter);
        SummaryJson.Texts(json, "higher_is_better", plan.Choice.HigherIsBetter);
        SummaryJson.Texts(json, "shown", plan.Choice.Shown);
        json.WriteEndObject();
    }

    /// <summary>A number; null where there is none or JSON cannot write it.</summary>
    public static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A whole number of any size; null where there is none.</summary>
    public static void Whole(Utf8JsonWriter json, string name, ulong? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    // The least and most that is asked for within the analysed frequencies; a constant has both alike.
    private static void Asked(Utf8JsonWriter json, AnalysisResult result)
    {
        double least = double.PositiveInfinity;
        double most = double.NegativeInfinity;
        foreach (double hertz in result.Campaign.Grid.Hertz)
        {
            if (result.Plan.Requirement?.At(new Hertz(hertz)) is { } asked)
            {
                (least, most) = (Math.Min(least, asked.Value), Math.Max(most, asked.Value));
            }
        }

        Number(json, "required_least_db", least);
        Number(json, "required_most_db", most);
    }

    private static void Entry(Utf8JsonWriter json, UncertaintyEntry entry)
    {
        json.WriteStartObject();
        json.WriteString("name", entry.Name);
        Number(json, "half_width_db", entry.HalfWidthDb);
        json.WriteString("distribution", entry.Distribution.ToString().ToLowerInvariant());
        Number(json, "k", entry.Distribution == ErrorDistribution.Normal ? entry.CoverageFactor : null);
        Number(json, "dof", double.IsFinite(entry.DegreesOfFreedom) ? entry.DegreesOfFreedom : null);
        Number(json, "top_half_width_db", entry.Distribution == ErrorDistribution.Trapezoidal ? entry.TopHalfWidthDb : null);
        Number(json, "reflection_source", entry.Mismatch?.Source.Magnitude);
        Number(json, "reflection_load", entry.Mismatch?.Load.Magnitude);
        json.WriteString("acts_on", entry.ActsOn.ToString().ToLowerInvariant());
        json.WriteBoolean("common", entry.Common);
        json.WriteEndObject();
    }
}
