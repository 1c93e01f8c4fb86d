using System.Text.Json;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Files.Results;

/// <summary>The choices of an analysis, as summary.json tells them.</summary>
internal static class SummaryPlan
{
    public static void Write(Utf8JsonWriter json, AnalysisResult result) => json.Object("plan", () =>
    {
        AnalysisPlan plan = result.Plan;
        json.Number("confidence", plan.Confidence.Level);
        Averaging(json, result);
        json.WriteString("scale", result.Campaign.Scale.Symbol());
        json.Band(plan.Band);
        Interpolated(json, plan);
        Asked(json, result);
        FloorAndLeakage(json, plan);
        Receiver(json, plan);
        json.Numbers("budget_frequencies_hz", plan.BudgetFrequencies.Select(f => f.Value));
        json.Objects("uncertainties", plan.Uncertainties, entry => Entry(json, entry));
        Comparisons(json, plan);
        Field(json, plan.Field);
    });

    private static void Averaging(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteString("averaging", result.Plan.Averaging.ToString().ToLowerInvariant());
        json.WriteString("averaging_in_use", result.Averaging.Averaging.ToString().ToLowerInvariant());
        json.WriteString("averaging_source", result.Averaging.Source.ToString().ToLowerInvariant());
    }

    private static void Receiver(Utf8JsonWriter json, AnalysisPlan plan)
    {
        json.Number("rbw_hz", plan.Setup.ResolutionBandwidthHz);
        json.Number("attenuation_db", plan.Setup.AttenuationDb);
        json.Number("source_dbm", plan.SourceDbm);
        json.Number("max_input_dbm", plan.MaximumInputDbm);
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
            json.Object("field", () =>
            {
                json.Number("threat_v_per_m", threat.VoltsPerMetre);
                json.Number("tolerable_v_per_m", threat.TolerableVoltsPerMetre);
            });
        }
    }

    // Only where stated: a summary of a campaign that states none of them is what it was before they were known.
    private static void FloorAndLeakage(Utf8JsonWriter json, AnalysisPlan plan)
    {
        json.Number("declared_floor_db", plan.DeclaredFloorDb);
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
            json.Texts("shields_nothing", plan.ShieldNothing.Select(s => s.ToString()));
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
        json.Objects("named_bands", plan.NamedBands, named =>
        {
            json.WriteString("name", named.Name);
            json.Band(named.Band);
        });
        json.Object("lots", () =>
        {
            json.Number("same_within_db", plan.Lots.MarginDb);
            json.Number("share", plan.Lots.Share);
            if (plan.Lots.OrderedBy is { } factor)
            {
                json.WriteString("ordered_by", factor);
            }
        });
        json.Object("choice", () =>
        {
            json.WriteString("yardstick", plan.Choice.Yardstick?.ToString());
            json.Texts("lower_is_better", plan.Choice.LowerIsBetter);
            json.Texts("higher_is_better", plan.Choice.HigherIsBetter);
            json.Texts("shown", plan.Choice.Shown);
        });
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

        json.Number("required_least_db", least);
        json.Number("required_most_db", most);
        json.Number("requirement_confidence", result.Plan.Rule?.Level.Level);
        json.Number("guard_band_db", result.Plan.Rule?.GuardBand.Value);
        json.Number("margin_db", result.Plan.Margin.Value);
    }

    private static void Entry(Utf8JsonWriter json, UncertaintyEntry entry)
    {
        json.WriteString("name", entry.Name);
        json.Number("half_width_db", entry.HalfWidthDb);
        json.WriteString("distribution", entry.Distribution.ToString().ToLowerInvariant());
        json.Number("k", entry.Distribution == ErrorDistribution.Normal ? entry.CoverageFactor : null);
        json.Number("dof", double.IsFinite(entry.DegreesOfFreedom) ? entry.DegreesOfFreedom : null);
        json.Number("top_half_width_db", entry.Distribution == ErrorDistribution.Trapezoidal ? entry.TopHalfWidthDb : null);
        json.Number("reflection_source", entry.Mismatch?.Source.Magnitude);
        json.Number("reflection_load", entry.Mismatch?.Load.Magnitude);
        json.WriteString("acts_on", entry.ActsOn.ToString().ToLowerInvariant());
        json.WriteBoolean("common", entry.Common);
    }
}
