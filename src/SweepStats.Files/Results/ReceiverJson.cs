using System.Text.Json;
using SweepStats.Files.Summaries;
using SweepStats.Quantities;
using SweepStats.Receivers;
using static SweepStats.Files.Results.ResultNumber;

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
        JsonSerializer.Serialize(to, Of(test, context), SummaryNames.Printed.ReceiverSummary);
        to.Write("\n"u8);
    }

    private static ReceiverSummary Of(ReceiverTest test, SummaryContext context) => new(
        SummaryJson.SchemaVersion, context.Program, context.Version, SummaryJson.WholeSeconds(context.GeneratedAt).UtcDateTime,
        test.Question.Confidence.Level, test.Question.Ratio, Finite(test.Question.Claim?.Value),
        ReceiverGroupsCsv.Claim(test.Claim),
        [.. test.Groups.Select(group => Group(group, test.Question.Claim))],
        [.. test.Observations.Select(Observation)],
        Inputs: SummaryJson.Files(context.Inputs),
        ReportFiles: SummaryJson.Files(context.ReportFiles));

    private static SummaryStationGroup Group(StationGroup group, Decibels? claim) => new(
        StartHz: Finite(group.Band?.Start.Value),
        StopHz: Finite(group.Band?.Stop.Value),
        AtLeastDb: Finite(group.AtLeast?.Value),
        AtMostDb: Finite(group.AtMost?.Value),
        SeLowDb: Finite(group.Interval?.Low),
        SeHighDb: Finite(group.Interval?.High),
        ReceiverGroupsCsv.Claim(group.Claim),
        group.Contradiction is { } both ? new(both.Silent.Name, both.Heard.Name, Finite(both.DifferenceDb)) : null,
        NextMarginDb: Finite(group.Next?.MarginDb),
        NextShareSilent: Finite(group.Next?.ShareSilent),
        NextWidthDb: Finite(group.Next?.WidthDb),
        MarginForClaimDb: Finite(group.SupportingMarginDb),
        SweepRangeNeededDb: Finite(group.RangeForSweepsDb(claim)));

    private static SummaryObservation Observation(ReceiverObservation o) => new(
        o.Name, Finite(o.Frequency?.Value), Finite(o.MarginDb),
        MarginUDb: o.IsUncertaintyStated ? Finite(o.UncertaintyDb) : null,
        ReceiverCsv.Origin(o.Level.Origin), o.HeardCovered, ReceiverCsv.Evidence(o.State));
}
