namespace SweepStats.Files.Summaries;

/// <summary>What summary.json of a comparison of lots over several campaigns holds. Immutable.</summary>
/// <remarks>As in <see cref="ResultSummary"/>: members in the order of the file, under its names.</remarks>
public sealed record HistorySummary(int SchemaVersion, string Program, string Version, DateTime GeneratedAt, double Confidence,
    double Share, SummaryTogether Together, ImmutableArray<SummaryFile> Inputs, ImmutableArray<SummaryFile> ReportFiles,
    ImmutableArray<string> LeftOut);

/// <summary>The comparison; its level is that of every interval of a difference.</summary>
public sealed record SummaryTogether(double StartHz, double StopHz, int Points, double? ClearShare, double DifferenceLevel,
    ImmutableArray<SummaryHistoryStretch> Stretches, ImmutableArray<SummaryHistoryLot> Lots,
    ImmutableArray<SummaryHistoryPair> Pairs, ImmutableArray<SummaryHistoryBand> Bands,
    ImmutableArray<SummaryBandLeftOut> BandsNotCompared, IEnumerable<SummaryHistoryFrequency> ByFrequency,
    ImmutableArray<SummaryChart> OverTime);

/// <summary>Where two lots differ to one side.</summary>
public sealed record SummaryHistoryStretch(string FirstCampaign, string First, string SecondCampaign, string Second,
    double StartHz, double StopHz, int Frequencies, int HiddenFrequencies, double? DifferenceDb);

/// <summary>A lot of one of the campaigns.</summary>
public sealed record SummaryHistoryLot(string Campaign, string Lot, int Specimens, Estimate MeanDb, double? PromisedDb,
    double? PromisedRankDb, double? PlainMeanDb);

/// <summary>Two lots over a band.</summary>
public sealed record SummaryHistoryPair(string FirstCampaign, string First, string SecondCampaign, string Second,
    Estimate? DifferenceDb, double WithinDb, double? PNotWithin, double? POfMeans, double? PAdjusted);

/// <summary>Lots over a named band.</summary>
public sealed record SummaryHistoryBand(string Name, double StartHz, double StopHz, double? ClearShare,
    ImmutableArray<SummaryHistoryLot> Lots, ImmutableArray<SummaryHistoryPair> Pairs);

/// <summary>A named band that is not compared: "limits-differ" or "no-frequency".</summary>
public sealed record SummaryBandLeftOut(string Name, string Because, ImmutableArray<SummaryBandLimits> Limits);

/// <summary>Limits that a campaign gives a named band.</summary>
public sealed record SummaryBandLimits(string Campaign, double StartHz, double StopHz);

/// <summary>All pairs at one frequency.</summary>
public sealed record SummaryHistoryFrequency(double FrequencyHz, ImmutableArray<SummaryPairPoint> Pairs);

/// <summary>Two lots at one frequency: a pair by its place in the list of pairs, whose names would be most of the file.</summary>
public sealed record SummaryPairPoint(int Pair, Estimate? DifferenceDb, double? P, double? PAdjusted, bool Differ,
    int CappedFirst, int CappedSecond);
