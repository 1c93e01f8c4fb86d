using System.Text.Json;
using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>
/// What summary.json of one campaign holds: the verdict, the plan and the figures. Written and read back by the same types.
/// Immutable.
/// </summary>
/// <remarks>
/// Members stand in the order of the file, under its names; summary.schema.json says what each of them means. Frequencies are in
/// Hz, levels and ratios in dB; null where a figure is not to be had. What this version does not know is not read.
/// </remarks>
public sealed record ResultSummary
{
    /// <summary>Rises when a field changes its meaning or goes.</summary>
    public required int SchemaVersion { get; init; }

    /// <summary>Which program wrote it.</summary>
    public required string Program { get; init; }

    /// <summary>Its version.</summary>
    public required string Version { get; init; }

    /// <summary>When it was written, in UTC to the second.</summary>
    public required DateTime GeneratedAt { get; init; }

    /// <summary>What the campaign calls itself.</summary>
    public required string Title { get; init; }

    /// <summary>Whether it was drawn and not measured.</summary>
    public required bool Rehearsed { get; init; }

    /// <summary>What identifies the test.</summary>
    public required SummaryIdentity Report { get; init; }

    /// <summary>"trustworthy", "limited" or "untrustworthy".</summary>
    public required string Trust { get; init; }

    /// <summary>"meets", "fails", "undecided" or "cannot-tell"; null where nothing was required.</summary>
    public required string? Requirement { get; init; }

    /// <summary>Doubts that matter and that nothing could test.</summary>
    public required ImmutableArray<string> NotTested { get; init; }

    /// <summary>Codes of the findings that overturn a decision.</summary>
    public required ImmutableArray<string> OverturnedBy { get; init; }

    /// <summary>How much of everything there is.</summary>
    public required SummaryCounted Counts { get; init; }

    /// <summary>What was stated and chosen, by its key, in the order of the file.</summary>
    public required IReadOnlyDictionary<string, JsonElement> Plan { get; init; }

    /// <summary>The noise floor; null where there is none.</summary>
    public required SummaryFloor? Floor { get; init; }

    /// <summary>Shielding of each specimen over the band.</summary>
    public required ImmutableArray<SummarySpecimen> Specimens { get; init; }

    /// <summary>Shielding of each lot.</summary>
    public required SummaryLots Lots { get; init; }

    /// <summary>What an ordered factor does to it; null where none is named, and then the file has no such member.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SummaryTrend? Trend { get; init; }

    /// <summary>Which specimen is best; null where it was not asked.</summary>
    public required SummaryChoice? Choice { get; init; }

    /// <summary>What was looked for, and how often it was found.</summary>
    public required ImmutableArray<SummaryCheck> Checks { get; init; }

    /// <summary>Files that the result rests on.</summary>
    public required ImmutableArray<SummaryFile> Inputs { get; init; }

    /// <summary>One hash over all of them.</summary>
    public required string InputsSha256 { get; init; }

    /// <summary>Files of the report beside the summary.</summary>
    public required ImmutableArray<SummaryFile> ReportFiles { get; init; }

    /// <summary>What was taken for granted.</summary>
    public required ImmutableArray<string> Assumptions { get; init; }

    /// <summary>Files left out, with reasons.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }

    /// <summary>Sweeps that were left out, each with its reason.</summary>
    public required ImmutableArray<SummaryExcluded> Excluded { get; init; }

    /// <summary>Seed of whatever was drawn at random; null where nothing was.</summary>
    public required ulong? Seed { get; init; }
}

/// <summary>What identifies the test, as stated; null where it is not.</summary>
public sealed record SummaryIdentity(string? Laboratory, string? Customer, string? Operator, string? Instrument,
    string? Calibration, string? Date);

/// <summary>How much of everything there is.</summary>
public sealed record SummaryCounted(SummarySweeps Sweeps, int Specimens, int Frequencies, SummaryStates States,
    SummaryFindings Findings);

/// <summary>Sweeps used, by role; copies and excluded ones apart.</summary>
public sealed record SummarySweeps(int Floor, int Reference, int Covered, int Linearity, int Plate, int Duplicates, int Excluded);

/// <summary>Readings over all specimens and frequencies, by state.</summary>
public sealed record SummaryStates(int Clear, [property: JsonPropertyName("near-floor")] int NearFloor, int Capped,
    int Overloaded, [property: JsonPropertyName("no-floor")] int NoFloor);

/// <summary>Findings: those that inform, limit what may be claimed, or make the measurement untrustworthy.</summary>
public sealed record SummaryFindings(int Note, int Warning, int Fault);

/// <summary>A check: how often it found something, and why it could not be made, or what it could not look at.</summary>
public sealed record SummaryCheck(string Code, int Findings, string? UntestedBecause, string? LeftBecause);

/// <summary>A file by its path, with '/' between folders, and its SHA-256 in lower-case hexadecimal.</summary>
public sealed record SummaryFile(string Path, string Sha256);

/// <summary>A sweep that was left out, and why.</summary>
public sealed record SummaryExcluded(string Sweep, string Reason);

/// <summary>The noise floor: "measured" or "declared"; one noise for each way of averaging that was reckoned with.</summary>
public sealed record SummaryFloor(string Source, int Sweeps, double? ReadingDeviationDb, double? SweepOffsetDeviationDb,
    ImmutableArray<SummaryNoise> Noise);

/// <summary>How noise scatters; looks are null for noise without scatter.</summary>
public sealed record SummaryNoise(double? Looks, double? LogAverages);
