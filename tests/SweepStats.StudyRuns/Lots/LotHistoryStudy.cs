using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.StudyRuns.Lots;

/// <summary>Two campaigns of lots that are all alike, each with a reference of its own.</summary>
/// <param name="Lots">Lots of each campaign.</param>
/// <param name="Specimens">Specimens of each lot.</param>
/// <param name="SpecimenDb">Standard deviation between specimens in dB.</param>
/// <param name="References">Reference sweeps of each campaign.</param>
/// <param name="SweepDb">Standard deviation of what all frequencies of a sweep share, reference and covered, in dB.</param>
public sealed record HistoryCell(int Lots, int Specimens, double SpecimenDb, int References, double SweepDb)
{
    /// <summary>Errors stated and drawn, at every frequency by itself.</summary>
    public ImmutableArray<UncertaintyEntry> Errors { get; init; } = [];

    /// <summary>How reference sweeps differ beside that.</summary>
    public ReferenceScatter Reference { get; init; }

    /// <summary>Standard deviation between specimens at each frequency by itself in dB.</summary>
    public double FrequencyDb { get; init; }

    /// <summary>Points of a sweep.</summary>
    public int Points { get; init; } = LotCell.Points;

    /// <summary>Where lots of the second campaign shield less or more; empty where all are alike.</summary>
    public ImmutableArray<LotStep> Steps { get; init; } = [];

    /// <summary>How much lower the reference of the second campaign lies: its floor hides more. In dB.</summary>
    public double LessRangeDb { get; init; }

    /// <summary>True shielding at the stop of the band in dB; 40 at its start.</summary>
    public double ShieldingStopDb { get; init; } = 40;

    internal RehearsalPlan Plan => new()
    {
        ShieldingStopDb = ShieldingStopDb,
        Points = Points,
        PlacementScatterDb = FrequencyDb,
        Lots = Lots,
        SpecimensPerLot = Specimens,
        SpecimenDeviationDb = SpecimenDb,
        SweepDeviationDb = SweepDb,
        ReferenceSweeps = References,
        CoveredSweeps = 3,
        SystematicErrors = Errors,
    };
}

/// <summary>How often lots of two campaigns that are alike were taken for different, at 5 %.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Any">Campaign pairs in which some pair of lots was, their number allowed for.</param>
/// <param name="Between">Single pairs of lots of two campaigns, in the mean over the band.</param>
/// <param name="Ignored">The same pairs and means, had the errors of the references been left out.</param>
/// <param name="Somewhere">The same pairs at some single frequency, the number of frequencies allowed for.</param>
/// <param name="Frequencies">The same pairs at single frequencies by themselves.</param>
public sealed record HistoryRow(HistoryCell Cell, Tally Any, Tally Between, Tally Ignored, Tally Somewhere, Tally Frequencies);

/// <summary>Compares lots of two campaigns that are alike.</summary>
public static class LotHistoryStudy
{
    // Second campaigns are drawn far from the first ones.
    private const ulong Apart = 10_000_000;

    /// <summary>The set-ups.</summary>
    public static ImmutableArray<HistoryCell> Cells { get; } =
    [
        new(1, 5, 0.3, 5, 0.3), new(1, 5, 0.3, 3, 0.5), new(1, 5, 0.3, 2, 0.5), new(2, 3, 0.5, 5, 0.5), new(3, 4, 1, 5, 0.3),
        new(2, 4, 0.1, 3, 1), new(2, 4, 0.3, 5, 0.3) { Errors =
            [new UncertaintyEntry { Name = "scale", HalfWidthDb = 1, Distribution = ErrorDistribution.Rectangular }] },
        new(2, 4, 0.3, 2, 0.3) { Reference = new(1, 0) }, new(2, 4, 0.3, 3, 0.3) { Reference = new(1, 0) },
        new(2, 4, 0.3, 2, 0.3) { Reference = new(0.3, 1), Points = 101 },
        new(2, 4, 0.3, 3, 0.3) { Reference = new(0.3, 1), Points = 101 },
        new(2, 4, 1, 5, 0.3) { ShieldingStopDb = 80, LessRangeDb = 15, Points = 101 },
        new(2, 4, 0.2, 5, 0.1) { FrequencyDb = 1, Points = 101 }, new(2, 2, 0.5, 3, 0.3) { FrequencyDb = 0.3, Points = 101 },
    ];

    /// <summary>Draws pairs of campaigns and counts.</summary>
    public static HistoryRow Run(HistoryCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var found = new LotHistory[campaigns];
        Parallel.For(0, campaigns, i => found[i] = Compare(cell, seed + (ulong)i));
        HistoryPair[] between = [.. found.SelectMany(f => f.Pairs).Where(p => p.First.Campaign != p.Second.Campaign)];
        return new HistoryRow(
            cell,
            Tally.Over(found.Select(f => (bool?)f.Pairs.Any(p => p.Adjusted < LotSizeStudy.Level))),
            Tally.Over(between.Select(p => p.Tested is { } tested ? tested.ProbabilityAlike < LotSizeStudy.Level : (bool?)null)),
            Tally.Over(between.Select(p => (bool?)(WithoutReferences(p).ProbabilityAlike < LotSizeStudy.Level))),
            Tally.Over(between.Select(p => Below(p.Points.Min(f => f.Adjusted)))),
            Tally.Over(between.SelectMany(p => p.Points).Select(f => Below(f.Probability))));
    }

    /// <summary>Draws a pair of campaigns and compares their lots.</summary>
    public static LotHistory Compare(HistoryCell cell, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return LotHistoryComparer.Of([Read(cell with { Steps = [], LessRangeDb = 0 }, "first", seed),
            Read(cell, "second", seed + Apart)], new LotQuestion());
    }

    private static bool? Below(double? probability) => probability is { } known ? known < LotSizeStudy.Level : null;

    private static CampaignLots Read(HistoryCell cell, string label, ulong seed)
    {
        Sweeps.Campaign drawn =
            Rehearser.Draw(cell.Plan with
            {
                Seed = seed,
                LotSteps = cell.Steps,
                ReferenceDbm = cell.Plan.ReferenceDbm - cell.LessRangeDb,
            }).Campaign;
        var read = ReadCampaign.Of(cell.Reference.On(drawn, seed), Sweeps.Averaging.Power, cell.Errors);
        return new CampaignLots(label, read.Aligned, read.Curves);
    }

    private static Equivalence WithoutReferences(HistoryPair pair)
    {
        ReadOnlySpan<Contribution> parts = [OfSpecimens(pair.First.Figures), OfSpecimens(pair.Second.Figures)];
        return new Equivalence(
            pair.First.Figures.MeanDb - pair.Second.Figures.MeanDb, WelchSatterthwaite.Combined(parts),
            WelchSatterthwaite.DegreesOfFreedom(parts), SameWithinMarginStudy.MarginDb);
    }

    private static Contribution OfSpecimens(LotSummary lot)
    {
        int freedom = lot.Specimens - 1;
        return new Contribution((lot.BetweenLotsIntervalDb!.Value.High - lot.MeanDb)
            / StudentT.Quantile(Confidence.NinetyFive.TwoSidedQuantile, freedom), freedom);
    }
}
