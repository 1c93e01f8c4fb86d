using System.Text.Json;
using SweepStats.Files.Summaries;

namespace SweepStats.Files.Results;

/// <summary>Who wrote a summary.json of any kind, and the files beside it; null where it says nothing.</summary>
internal sealed record SummaryList(string? Program = null, IReadOnlyList<SummaryListEntry?>? ReportFiles = null)
{
    /// <summary>Reads it, a piece at a time: that of thousands of specimens is large.</summary>
    /// <param name="file">Where it is.</param>
    /// <exception cref="JsonException">It is no JSON, or something else stands where a text or a list belongs.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static SummaryList? Read(string file)
    {
        using FileStream stream = File.OpenRead(file);
        return JsonSerializer.Deserialize(stream, SummaryNames.Default.SummaryList);
    }
}

/// <summary>A file of a report, as far as it is told.</summary>
internal sealed record SummaryListEntry(string? Path = null, string? Sha256 = null);
