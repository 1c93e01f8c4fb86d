using System.Text.Json;
using SweepStats.Files.Places;
using SweepStats.Files.Results;

namespace SweepStats.Files.Summaries;

/// <summary>A summary, or why there is none.</summary>
/// <param name="Summary">What was read; null where it was refused.</param>
/// <param name="Fault">What is wrong; null where it was read.</param>
public sealed record SummaryReading(ResultSummary? Summary, ReadFault? Fault);

/// <summary>Reads summary.json back.</summary>
public static class SummaryReader
{
    private const string Program = "sweepstats", Again = "make the report again with 'sweepstats run', and "
        + "name its folder; of several campaigns compare the report of each";

    /// <summary>Reads a report, whole or not at all.</summary>
    /// <param name="path">A report folder, or a summary.json.</param>
    public static SummaryReading Read(string path)
    {
        string file = Directory.Exists(path) ? Path.Combine(path, SummaryJson.FileName) : path;
        if (UnixCalls.IsRegularFile(file) == false)
        {
            return Refused(file, null, "this is no file", $"name the folder of a report, or its {SummaryJson.FileName}");
        }

        if (!File.Exists(file))
        {
            return Refused(path, null, Directory.Exists(path) ? $"the folder holds no {SummaryJson.FileName}"
                : "there is no such file or folder", $"name the folder of a report, or its {SummaryJson.FileName}");
        }

        try
        {
            using FileStream stream = File.OpenRead(file);
            return Checked(file, JsonSerializer.Deserialize(stream, SummaryNames.Default.ResultSummary));
        }
        catch (JsonException e)
        {
            return Refused(file, (int?)(e.LineNumber + 1),
                "this is no summary of one campaign, an older version wrote it, or it was changed", Again);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refused(file, null, "the file cannot be read", "check its permissions, or close programs that hold it");
        }
    }

    private static SummaryReading Checked(string file, ResultSummary? summary) => summary switch
    {
        null or { Program: not Program } => Refused(file, null, "no summary of sweepstats", Again),
        { SchemaVersion: var version } when version > SummaryJson.SchemaVersion => Refused(file, null,
            $"its schema_version is {version}, this program knows {SummaryJson.SchemaVersion}",
            "compare with the later version of sweepstats"),
        _ when !SummarySoundness.Holds(summary) => Refused(file, null,
            "a list holds nothing where something belongs, a number is not finite, or a text is none", Again),
        _ => new SummaryReading(summary, null),
    };

    private static SummaryReading Refused(string path, int? line, string problem, string remedy) =>
        new(null, new ReadFault(path, line, problem, remedy));
}
