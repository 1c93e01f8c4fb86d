using System.Text.Json;
using SweepStats.Quantities;
using SweepStats.Receivers;

namespace SweepStats.Files.Results;

/// <summary>A test with receivers as JSON: what --format json prints, and summary.json of its report. Decibels unless the name
/// says otherwise, null where there is no figure.</summary>
public static class ReceiverJson
{
    /// <summary>Writes one object.</summary>
    /// <param name="test">The test.</param>
    /// <param name="context">Program and files.</param>
    /// <param name="to">Where to.</param>
    public static void Write(ReceiverTest test, SummaryContext context, Stream to)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(context);
        using (var json = new Utf8JsonWriter(to, SummaryJson.Options))
        {
            json.WriteStartObject();
            SummaryJson.Program(json, context);
            json.WriteNumber("confidence", test.Question.Confidence.Level);
            json.WriteNumber("frequency_ratio", test.Question.Ratio);
            SummaryPlan.Number(json, "claim_db", test.Question.Claim?.Value);
            json.WriteString("claim", ReceiverGroupsCsv.Claim(test.Claim));
            Groups(json, test);
            Observations(json, test);
            SummaryJson.Hashes(json, "inputs", context.Inputs);
            SummaryJson.Hashes(json, EarlierReport.ListName, context.ReportFiles);
            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }

    private static void Groups(Utf8JsonWriter json, ReceiverTest test)
    {
        json.WriteStartArray("groups");
        foreach (StationGroup g in test.Groups)
        {
            json.WriteStartObject();
            SummaryPlan.Number(json, "start_hz", g.Band?.Start.Value);
            SummaryPlan.Number(json, "stop_hz", g.Band?.Stop.Value);
            SummaryPlan.Number(json, "at_least_db", g.AtLeast?.Value);
            SummaryPlan.Number(json, "at_most_db", g.AtMost?.Value);
            SummaryPlan.Number(json, "se_low_db", g.Interval?.Low);
            SummaryPlan.Number(json, "se_high_db", g.Interval?.High);
            json.WriteString("claim", ReceiverGroupsCsv.Claim(g.Claim));
            Contradiction(json, g.Contradiction);
            Next(json, g, test.Question.Claim);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Contradiction(Utf8JsonWriter json, MarginContradiction? contradiction)
    {
        if (contradiction is null)
        {
            json.WriteNull("contradiction");
            return;
        }

        json.WriteStartObject("contradiction");
        json.WriteString("silent", contradiction.Silent.Name);
        json.WriteString("heard", contradiction.Heard.Name);
        SummaryPlan.Number(json, "difference_db", contradiction.DifferenceDb);
        json.WriteEndObject();
    }

    private static void Next(Utf8JsonWriter json, StationGroup group, Decibels? claim)
    {
        SummaryPlan.Number(json, "next_margin_db", group.Next?.MarginDb);
        SummaryPlan.Number(json, "next_share_silent", group.Next?.ShareSilent);
        SummaryPlan.Number(json, "next_width_db", group.Next?.WidthDb);
        SummaryPlan.Number(json, "margin_for_claim_db", group.SupportingMarginDb);
        SummaryPlan.Number(json, "sweep_range_needed_db", group.RangeForSweepsDb(claim));
    }

    private static void Observations(Utf8JsonWriter json, ReceiverTest test)
    {
        json.WriteStartArray("observations");
        foreach (ReceiverObservation o in test.Observations)
        {
            json.WriteStartObject();
            json.WriteString("name", o.Name);
            SummaryPlan.Number(json, "frequency_hz", o.Frequency?.Value);
            SummaryPlan.Number(json, "margin_db", o.MarginDb);
            SummaryPlan.Number(json, "margin_u_db", o.IsUncertaintyStated ? o.UncertaintyDb : null);
            json.WriteString("level_from", ReceiverCsv.Origin(o.Level.Origin));
            json.WriteBoolean("covered_heard", o.HeardCovered);
            json.WriteString("evidence", ReceiverCsv.Evidence(o.State));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
