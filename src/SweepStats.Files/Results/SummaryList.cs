using System.Text.Json;
using System.Text.Json.Serialization;

namespace SweepStats.Files.Results;

/// <summary>What a summary.json says of who wrote it and of the files written with it.</summary>
internal sealed record SummaryList
{
    /// <summary>Which program wrote it.</summary>
    [JsonPropertyName("program")]
    public string? Program { get; init; }

    /// <summary>The files beside it, where it lists any.</summary>
    [JsonPropertyName(EarlierReport.ListName)]
    public SummaryListEntry?[]? Files { get; init; }

    /// <summary>Reads it, a piece at a time: that of thousands of specimens is large.</summary>
    /// <param name="file">Where it is.</param>
    /// <exception cref="JsonException">It is no JSON, or something else stands where a text or a list belongs.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static SummaryList? Read(string file)
    {
        using FileStream stream = File.OpenRead(file);
        return JsonSerializer.Deserialize(stream, SummaryListContext.Default.SummaryList);
    }
}

/// <summary>A file of a report.</summary>
internal sealed record SummaryListEntry
{
    /// <summary>Its path within the report, with '/' between folders.</summary>
    [JsonPropertyName("path")]
    public string? Path { get; init; }

    /// <summary>SHA-256 in lower-case hexadecimal.</summary>
    [JsonPropertyName("sha256")]
    public string? Sha256 { get; init; }
}

/// <summary>Reads lists without looking at types while running, which machine code alone cannot.</summary>
[JsonSerializable(typeof(SummaryList))]
internal sealed partial class SummaryListContext : JsonSerializerContext;
