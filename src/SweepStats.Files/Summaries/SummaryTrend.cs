namespace SweepStats.Files.Summaries;

/// <summary>What an ordered factor does to the shielding; "values" or "specimens" where too few of them are there.</summary>
public sealed record SummaryTrend(string OrderedBy, double Confidence, int Specimens, string? Lacking,
    SummaryTrendRequirement? Requirement, ImmutableArray<SummaryTrendValue> Values, ImmutableArray<SummaryTrendBand> Bands);

/// <summary>Up to which value the mean of such specimens meets the requirement at every frequency asked about.</summary>
public sealed record SummaryTrendRequirement(double OneSidedConfidence, string Holds, double? MetUpTo, double? NotMetFrom,
    int Frequencies, int ByGroups, int Hidden, double? DecidedAtHz, string? Obstacle, ImmutableArray<string> OverturnedBy);

/// <summary>Specimens at one value of the factor.</summary>
public sealed record SummaryTrendValue(double Value, int Specimens, double? MeanDb, string? Outcome);

/// <summary>The line along the factor over a band, its slope in dB for each unit; the name is null for the whole band.</summary>
public sealed record SummaryTrendBand(string? Name, double StartHz, double StopHz, double? ClearShare, Estimate? SlopeDb,
    bool WithinLots, double? SdDb, double? PStraight, bool Straight, double? PLotsApart);
