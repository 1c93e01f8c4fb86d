using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>Lots of a summary: where they differ over frequency, then the whole band and those with names.</summary>
public sealed record SummaryLots(ImmutableArray<SummaryStretch> Stretches, ImmutableArray<SummaryLotBand> Bands);

/// <summary>Where a lot stands out; its name is null where bounds hide which it is.</summary>
public sealed record SummaryStretch(double StartHz, double StopHz, int Frequencies, string? Lot, double? ApartDb, bool AtLeast);

/// <summary>Lots over a band; its name is null for the whole.</summary>
public sealed record SummaryLotBand(string? Name, double StartHz, double StopHz, double ClearShare, double Confidence, double? P,
    double? SharedErrorDb, ImmutableArray<SummaryLot> Lots, ImmutableArray<SummaryLotPair> Pairs, SummaryScatter ScatterDb,
    double? IntraclassCorrelation, SummaryStanding? SpecimenStanding, SummaryStanding? LotStanding,
    ImmutableArray<SummaryChart> OverTime, ImmutableArray<string> Foremost);

/// <summary>A lot over a band: the mean of its specimens, and what nearly all of them reach.</summary>
public sealed record SummaryLot(string Lot, int Specimens, Estimate MeanDb, double? PromisedDb, double? PromisedRankDb,
    double? PlainMeanDb, double? BetweenLotsLowDb, double? BetweenLotsHighDb, double? PromisedBetweenLotsDb);

/// <summary>Two lots, and whether they are the same within a margin.</summary>
public sealed record SummaryLotPair(string First, string Second, Estimate? DifferenceDb, double DifferenceLevel, double WithinDb,
    double? PNotWithin);

/// <summary>Standard deviation in dB that each level adds; levels that cannot be told apart have no member.</summary>
public sealed record SummaryScatter
{
    /// <summary>Between lots.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Lot { get; init; }

    /// <summary>Between specimens of a lot.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Specimen { get; init; }

    /// <summary>Between placements of a specimen.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Placement { get; init; }

    /// <summary>Between sweeps of a placement.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Sweep { get; init; }
}

/// <summary>Whether means and scatters go together (ISO 5725-2); critical values at 5 % and 1 %.</summary>
public sealed record SummaryStanding(double RepeatabilityDb, double ReproducibilityDb, ImmutableArray<double> HCritical,
    ImmutableArray<SummaryMember> Members, SummaryCochran Cochran, SummaryGrubbs Grubbs);

/// <summary>A specimen or lot among the others: Mandel's h and k; k and its limits are null for a single value.</summary>
public sealed record SummaryMember(string Name, double? H, double? K, ImmutableArray<double>? KCritical);

/// <summary>Cochran's C of the member whose share of the squares is least likely by chance.</summary>
public sealed record SummaryCochran(double C, string Name, double P);

/// <summary>Grubbs' G of the outermost mean.</summary>
public sealed record SummaryGrubbs(double G, string Name, double P);

/// <summary>A control chart: "lot-mean", "lot-deviation", "specimen" or "moving-range".</summary>
public sealed record SummaryChart(string Figure, double CentreDb, ImmutableArray<SummaryChartPoint> Points);

/// <summary>A point of it, between the control limits or outside; the time is null where it is not noted.</summary>
public sealed record SummaryChartPoint(string Label, DateTimeOffset? TakenAt, double ValueDb, double LowDb, double HighDb,
    bool Outside);
