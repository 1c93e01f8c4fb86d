using System.Text.Json;
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
        using (var json = new Utf8JsonWriter(to, SummaryJson.Options))
        {
            json.WriteStartObject();
            SummaryJson.Program(json, context);
            json.WriteNumber("confidence", history.Question.Confidence.Level);
            json.WriteNumber("share", history.Question.Share);
            json.WriteStartObject("together");
            TogetherJson.Write(json, history);
            json.WriteEndObject();
            SummaryJson.Hashes(json, "inputs", context.Inputs);
            SummaryJson.Hashes(json, EarlierReport.ListName, context.ReportFiles);
            json.Texts("left_out", context.LeftOut);
            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }
}
