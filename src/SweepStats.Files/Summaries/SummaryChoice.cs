namespace SweepStats.Files.Summaries;

/// <summary>The ranking of a summary: the whole band first, then those with names.</summary>
public sealed record SummaryChoice(double Confidence, string Repeats, ImmutableArray<string> NotRankedBecause,
    ImmutableArray<SummaryChoiceBand> Bands, ImmutableArray<SummaryProperty> Properties,
    ImmutableArray<SummaryDominated> Dominated);

/// <summary>A ranking over a band, best first; its name is null for the whole.</summary>
public sealed record SummaryChoiceBand(string? Name, double StartHz, double StopHz, int Points, int LeftOut, int CappedLeftOut,
    ImmutableArray<SummaryCandidate> Ranking, SummaryCandidate? Yardstick)
{
    /// <summary>Those that cannot be told from the best, by name.</summary>
    public ImmutableArray<string> Foremost() =>
        [.. Ranking.Where(c => c.Group == 1).Select(c => $"{c.Lot}/{c.Specimen}").Order(StringComparer.Ordinal)];
}

/// <summary>A specimen of a ranking; group 1 cannot be told from the best, null where nothing is ranked.</summary>
public sealed record SummaryCandidate(string Lot, string Specimen, int? Rank, int? Group, Estimate MeanDb, double? AtLeastDb,
    int CappedPoints, bool KnownFromBelowOnly, double? ProbabilityBestLow, double? ProbabilityBestHigh,
    Estimate? BelowYardstickDb);

/// <summary>What is stated of a specimen beside its sweeps.</summary>
public sealed record SummaryProperty(string Lot, string Specimen, string Name, string Text);

/// <summary>A specimen that another leaves no reason to choose, both as lot/specimen.</summary>
public sealed record SummaryDominated(string Specimen, string By);
