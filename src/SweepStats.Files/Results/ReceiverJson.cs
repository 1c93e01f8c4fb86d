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
            json.Number("claim_db", test.Question.Claim?.Value);
            json.WriteString("claim", ReceiverGroupsCsv.Claim(test.Claim));
            Groups(json, test);
            Observations(json, test);
            SummaryJson.Hashes(json, "inputs", context.Inputs);
            SummaryJson.Hashes(json, EarlierReport.ListName, context.ReportFiles);
            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }

    private static void Groups(Utf8JsonWriter json, ReceiverTest test) => json.Objects("groups", test.Groups, g =>
    {
        json.Band(g.Band);
        json.Number("at_least_db", g.AtLeast?.Value);
        json.Number("at_most_db", g.AtMost?.Value);
        json.Number("se_low_db", g.Interval?.Low);
        json.Number("se_high_db", g.Interval?.High);
        json.WriteString("claim", ReceiverGroupsCsv.Claim(g.Claim));
        json.Object("contradiction", g.Contradiction, contradiction =>
        {
            json.WriteString("silent", contradiction.Silent.Name);
            json.WriteString("heard", contradiction.Heard.Name);
            json.Number("difference_db", contradiction.DifferenceDb);
        });
        Next(json, g, test.Question.Claim);
    });

    private static void Next(Utf8JsonWriter json, StationGroup group, Decibels? claim)
    {
        json.Number("next_margin_db", group.Next?.MarginDb);
        json.Number("next_share_silent", group.Next?.ShareSilent);
        json.Number("next_width_db", group.Next?.WidthDb);
        json.Number("margin_for_claim_db", group.SupportingMarginDb);
        json.Number("sweep_range_needed_db", group.RangeForSweepsDb(claim));
    }

    private static void Observations(Utf8JsonWriter json, ReceiverTest test) =>
        json.Objects("observations", test.Observations, o =>
    {
        json.WriteString("name", o.Name);
        json.Number("frequency_hz", o.Frequency?.Value);
        json.Number("margin_db", o.MarginDb);
        json.Number("margin_u_db", o.IsUncertaintyStated ? o.UncertaintyDb : null);
        json.WriteString("level_from", ReceiverCsv.Origin(o.Level.Origin));
        json.WriteBoolean("covered_heard", o.HeardCovered);
        json.WriteString("evidence", ReceiverCsv.Evidence(o.State));
    });
}
