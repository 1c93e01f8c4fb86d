using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>What a summary.json of one campaign holds, read back: the verdict, the plan and the figures. Immutable.</summary>
/// <remarks>Names are those of the file (summary.schema.json); what is not listed here is not read.</remarks>
public sealed record ResultSummary
{
    /// <summary>Rises when a field changes its meaning or goes.</summary>
    public required int SchemaVersion { get; init; }

    /// <summary>Which program wrote it.</summary>
    public required string Program { get; init; }

    /// <summary>Its version.</summary>
    public required string Version { get; init; }

    /// <summary>When it was written.</summary>
    public required DateTimeOffset GeneratedAt { get; init; }

    /// <summary>What the campaign calls itself.</summary>
    public required string Title { get; init; }

    /// <summary>Whether it was drawn and not measured.</summary>
    public required bool Rehearsed { get; init; }

    /// <summary>"trustworthy", "limited" or "untrustworthy".</summary>
    public required string Trust { get; init; }

    /// <summary>"meets", "fails", "undecided" or "cannot-tell"; null where nothing was required.</summary>
    public required string? Requirement { get; init; }

    /// <summary>Doubts that matter and that nothing could test.</summary>
    public required ImmutableArray<string> NotTested { get; init; }

    /// <summary>Codes of the findings that overturn a decision.</summary>
    public required ImmutableArray<string> OverturnedBy { get; init; }

    /// <summary>What was stated and chosen, by its key, in the order of the file.</summary>
    public required IReadOnlyDictionary<string, JsonElement> Plan { get; init; }

    /// <summary>Shielding of each specimen over the band.</summary>
    public required ImmutableArray<SummarySpecimen> Specimens { get; init; }

    /// <summary>Shielding of each lot.</summary>
    public required SummaryLots Lots { get; init; }

    /// <summary>Which specimen is best; null where it was not asked.</summary>
    public required SummaryChoice? Choice { get; init; }

    /// <summary>What was looked for, and how often it was found.</summary>
    public required ImmutableArray<SummaryCheck> Checks { get; init; }

    /// <summary>How much of everything there is.</summary>
    public required SummaryCounted Counts { get; init; }

    /// <summary>Sweeps that were left out, each with its reason.</summary>
    public required ImmutableArray<SummaryExcluded> Excluded { get; init; }

    /// <summary>Files that the result rests on.</summary>
    public required ImmutableArray<SummaryFile> Inputs { get; init; }
}

/// <summary>A specimen of a summary. Immutable.</summary>
public sealed record SummarySpecimen
{
    /// <summary>Its lot.</summary>
    public required string Lot { get; init; }

    /// <summary>Its name within the lot.</summary>
    public required string Specimen { get; init; }

    /// <summary>Lowest frequency that it was compared at, in Hz.</summary>
    public required double StartHz { get; init; }

    /// <summary>Highest frequency that it was compared at, in Hz.</summary>
    public required double StopHz { get; init; }

    /// <summary>What it shields at every frequency of the band at least, in dB; null where nothing can be said.</summary>
    public required double? AtLeastDb { get; init; }

    /// <summary>Mean over the band, in dB.</summary>
    public required Estimate MeanDb { get; init; }

    /// <summary>What nine tenths of the frequencies reach, in dB.</summary>
    public required Estimate P10Db { get; init; }

    /// <summary>What was decided; null where nothing was required.</summary>
    public required SummaryOutcome? Requirement { get; init; }

    /// <summary>Lot and name.</summary>
    [JsonIgnore]
    public string Name => $"{Lot}/{Specimen}";
}

/// <summary>What was decided of a specimen.</summary>
/// <param name="Outcome">"meets", "fails", "undecided" or "cannot-tell".</param>
public sealed record SummaryOutcome(string Outcome);

/// <summary>Lots of a summary.</summary>
/// <param name="Bands">The whole band first, then those with names.</param>
public sealed record SummaryLots(ImmutableArray<SummaryLotBand> Bands);

/// <summary>Lots over a band.</summary>
/// <param name="Name">Name of the band; null for the whole.</param>
/// <param name="Lots">One figure a lot.</param>
public sealed record SummaryLotBand(string? Name, ImmutableArray<SummaryLot> Lots);

/// <summary>A lot over a band.</summary>
/// <param name="Lot">Its name.</param>
/// <param name="MeanDb">Mean of its specimens in dB; null where there is none.</param>
/// <param name="PromisedDb">What nearly all of its specimens reach, in dB; null where it cannot be promised.</param>
public sealed record SummaryLot(string Lot, Estimate? MeanDb, double? PromisedDb);

/// <summary>The ranking of a summary.</summary>
/// <param name="Bands">The whole band first, then those with names.</param>
public sealed record SummaryChoice(ImmutableArray<SummaryChoiceBand> Bands);

/// <summary>A ranking over a band.</summary>
/// <param name="Name">Name of the band; null for the whole.</param>
/// <param name="Ranking">Best first.</param>
public sealed record SummaryChoiceBand(string? Name, ImmutableArray<SummaryCandidate> Ranking)
{
    /// <summary>Those that cannot be told from the best, by name.</summary>
    public ImmutableArray<string> Foremost() =>
        [.. Ranking.Where(c => c.Group == 1).Select(c => $"{c.Lot}/{c.Specimen}").Order(StringComparer.Ordinal)];
}

/// <summary>A specimen of a ranking.</summary>
/// <param name="Lot">Its lot.</param>
/// <param name="Specimen">Its name.</param>
/// <param name="Group">1 for those that cannot be told from the best; null where it is not ranked.</param>
public sealed record SummaryCandidate(string Lot, string Specimen, int? Group);

/// <summary>A check of a summary.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Findings">How often it was found.</param>
/// <param name="UntestedBecause">Why it could not be made; null where it was.</param>
/// <param name="LeftBecause">What it could not look at beside the rest; null where it looked at all or at nothing.</param>
public sealed record SummaryCheck(string Code, int Findings, string? UntestedBecause, string? LeftBecause);

/// <summary>Counts of a summary.</summary>
/// <param name="Frequencies">Frequencies that all sweeps share.</param>
/// <param name="Findings">Findings by severity.</param>
public sealed record SummaryCounted(int Frequencies, SummaryFindings Findings);

/// <summary>Findings by severity.</summary>
/// <param name="Note">Those that inform.</param>
/// <param name="Warning">Those that limit what may be claimed.</param>
/// <param name="Fault">Those that make the measurement untrustworthy.</param>
public sealed record SummaryFindings(int Note, int Warning, int Fault);

/// <summary>A sweep that was left out.</summary>
/// <param name="Sweep">Its name.</param>
/// <param name="Reason">Why.</param>
public sealed record SummaryExcluded(string Sweep, string Reason);

/// <summary>A file that a result rests on.</summary>
/// <param name="Path">Its path in the campaign.</param>
/// <param name="Sha256">SHA-256 in lower-case hexadecimal.</param>
public sealed record SummaryFile(string Path, string Sha256);
