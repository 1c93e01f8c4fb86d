using System.Text.Json;
using SweepStats.Planning;

namespace SweepStats.Cli;

/// <summary>A plan as one JSON object; decibels unless the name says otherwise, null where not known or without limit.</summary>
internal static class PlanJson
{
    /// <summary>The object as text; with a pilot it also lists the files left out of that.</summary>
    public static string Of(SweepPlan plan, CampaignAnalysis? pilot) => ResultJson.Of(json =>
    {
        Asked(json, plan.Question);
        Basis(json, plan.Basis);
        Widths(json, "table", plan.Table.SelectMany(row => row));
        Widths(json, "fewest", plan.Fewest);
        Reached(json, plan);
        json.WritePropertyName("chosen");
        Width(json, new ExpectedWidth(plan.Chosen, plan.HalfWidthDb));
        Number(json, "half_width_nine_of_ten_db", plan.HalfWidthInNineOfTenDb);
        Number(json, "twice_the_placements_db", plan.TwiceThePlacementsDb);
        Number(json, "twice_the_sweeps_db", plan.TwiceTheSweepsDb);
        Number(json, "usable_range_db", plan.UsableRangeDb);
        Claim(json, plan);
        ResultJson.LeftOut(json, pilot);
    });

    private static void Asked(Utf8JsonWriter json, PlanQuestion question)
    {
        json.WriteNumber("confidence", question.Confidence.Level);
        Number(json, "half_width_wanted_db", question.HalfWidthDb);
    }

    private static void Basis(Utf8JsonWriter json, PlanBasis basis)
    {
        json.WriteStartObject("basis");
        Number(json, "reference_deviation_db", basis.ReferenceDeviationDb);
        Number(json, "sweep_deviation_db", basis.SweepDeviationDb);
        Number(json, "placement_deviation_db", basis.PlacementDeviationDb);
        Number(json, "range_db", basis.RangeDb);
        json.WriteStartArray("looks");
        foreach (var noise in basis.Noise.Where(n => double.IsFinite(n.Looks)))
        {
            json.WriteNumberValue(noise.Looks);
        }

        json.WriteEndArray();
        Number(json, "floor_frequencies", basis.FloorFrequencies);
        json.WriteEndObject();
    }

    private static void Reached(Utf8JsonWriter json, SweepPlan plan)
    {
        if (plan.Question.HalfWidthDb is { } wanted)
        {
            json.WriteBoolean("half_width_reached", plan.HalfWidthDb <= wanted);
        }
        else
        {
            json.WriteNull("half_width_reached");
        }
    }

    private static void Widths(Utf8JsonWriter json, string name, IEnumerable<ExpectedWidth> widths)
    {
        json.WriteStartArray(name);
        foreach (ExpectedWidth width in widths)
        {
            Width(json, width);
        }

        json.WriteEndArray();
    }

    private static void Width(Utf8JsonWriter json, ExpectedWidth width)
    {
        json.WriteStartObject();
        json.WriteNumber("placements", width.Numbers.Placements);
        json.WriteNumber("sweeps_each", width.Numbers.SweepsEach);
        json.WriteNumber("reference_sweeps", width.Numbers.ReferenceSweeps);
        Number(json, "half_width_db", width.HalfWidthDb);
        json.WriteEndObject();
    }

    private static void Claim(Utf8JsonWriter json, SweepPlan plan)
    {
        if (plan.Claim is not { } claim)
        {
            json.WriteNull("claim");
            return;
        }

        json.WriteStartObject("claim");
        Number(json, "claim_db", claim.ClaimDb);
        json.WriteNumber("one_sided_level", (plan.Question.ClaimLevel ?? plan.Question.Confidence).Level);
        Number(json, "required_db", plan.Question.FromRequirement?.Required.Value);
        Number(json, "required_at_hz", plan.Question.FromRequirement?.At.Value);
        Number(json, "shielding_db", claim.ShieldingDb);
        Number(json, "probability", plan.Question.Probability);
        Number(json, "range_needed_db", claim.RangeNeededDb);
        Number(json, "missing_db", plan.MissingRangeDb);
        Number(json, "share_with_plenty", claim.ShareWithPlenty);
        Number(json, "share_now", claim.ShareNow);
        Number(json, "expected_low_db", claim.Expected?.MedianLowDb);
        Number(json, "expected_high_db", claim.Expected?.MedianHighDb);
        Number(json, "bounded_share", claim.Expected?.BoundedShare);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
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
}
