namespace SweepStats.Files.Summaries;

/// <summary>What summary.json of a test with receivers holds. Immutable.</summary>
/// <remarks>As in <see cref="ResultSummary"/>: members in the order of the file, under its names.</remarks>
public sealed record ReceiverSummary(int SchemaVersion, string Program, string Version, DateTime GeneratedAt, double Confidence,
    double FrequencyRatio, double? ClaimDb, string? Claim, ImmutableArray<SummaryStationGroup> Groups,
    ImmutableArray<SummaryObservation> Observations, ImmutableArray<SummaryFile> Inputs, ImmutableArray<SummaryFile> ReportFiles);

/// <summary>What neighbouring stations show together, and which one would show more; a claim is "supported" or not.</summary>
public sealed record SummaryStationGroup(double? StartHz, double? StopHz, double? AtLeastDb, double? AtMostDb, double? SeLowDb,
    double? SeHighDb, string? Claim, SummaryContradiction? Contradiction, double? NextMarginDb, double? NextShareSilent,
    double? NextWidthDb, double? MarginForClaimDb, double? SweepRangeNeededDb);

/// <summary>A silent station and one that is heard, which cannot both be right.</summary>
public sealed record SummaryContradiction(string Silent, string Heard, double? DifferenceDb);

/// <summary>A station, heard or silent under the cover.</summary>
public sealed record SummaryObservation(string Name, double? FrequencyHz, double? MarginDb, double? MarginUDb, string LevelFrom,
    bool CoveredHeard, string Evidence);
