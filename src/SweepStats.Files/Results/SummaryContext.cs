using SweepStats.Files.Campaigns;

namespace SweepStats.Files.Results;

/// <summary>What summary.json tells beside the result: program, input files, seed and time.</summary>
public sealed record SummaryContext
{
    /// <summary>Name of the program.</summary>
    public required string Program { get; init; }

    /// <summary>Its version.</summary>
    public required string Version { get; init; }

    /// <summary>When the report was made; the only time stamp in it.</summary>
    public required DateTimeOffset GeneratedAt { get; init; }

    /// <summary>Seed of whatever was drawn at random; null where nothing was.</summary>
    public required ulong? Seed { get; init; }

    /// <summary>Files that the result rests on.</summary>
    public required ImmutableArray<InputFile> Inputs { get; init; }

    /// <summary>
    /// Files of the report beside summary.json, by which a later run tells them from files of others; empty where no report is
    /// written.
    /// </summary>
    public required ImmutableArray<InputFile> ReportFiles { get; init; }

    /// <summary>What was taken for granted.</summary>
    public required ImmutableArray<string> Assumptions { get; init; }

    /// <summary>Files left out, with reasons.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }
}
