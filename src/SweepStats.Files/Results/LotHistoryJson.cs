using System.Text.Json;
using SweepStats.Files.Summaries;
using SweepStats.Lots;

namespace SweepStats.Files.Results;

/// <summary>summary.json of a comparison of lots over several campaigns: the comparison, and what it rests on.</summary>
public static class LotHistoryJson
{
    /// <summary>Writes the summary.</summary>
    /// <param name="history">The comparison.</param>
    /// <param name="context">
    /// Program and files; its inputs are those of all campaigns, each behind the name of its folder.
    /// </param>
    /// <param name="to">Where to.</param>
    public static void Write(LotHistory history, SummaryContext context, Stream to)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(context);
        JsonSerializer.Serialize(to, Of(history, context), SummaryNames.Printed.HistorySummary);
        to.Write("\n"u8);
    }

    private static HistorySummary Of(LotHistory history, SummaryContext context) => new(
        SummaryJson.SchemaVersion, context.Program, context.Version, SummaryJson.WholeSeconds(context.GeneratedAt).UtcDateTime,
        history.Question.Confidence.Level, history.Question.Share, TogetherJson.Of(history),
        Inputs: SummaryJson.Files(context.Inputs),
        ReportFiles: SummaryJson.Files(context.ReportFiles),
        context.LeftOut);
}
