using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Rehearsal.Lots;

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

    internal RehearsalPlan Plan => new()
    {
        Points = LotCell.Points,
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
/// <param name="Between">Single pairs of lots of two campaigns.</param>
/// <param name="Ignored">The same pairs, had the errors of the references been left out.</param>
public sealed record HistoryRow(HistoryCell Cell, Tally Any, Tally Between, Tally Ignored);

/// <summary>Compares lots of two campaigns that are alike.</summary>
public static class LotHistoryStudy
{
    // Second campaigns are drawn far from the first ones.
    private const ulong Apart = 10_000_000;

    /// <summary>The set-ups.</summary>
    public static ImmutableArray<HistoryCell> Cells { get; } =
    [
        new(1, 5, 0.3, 5, 0.3), new(1, 5, 0.3, 3, 0.5), new(1, 5, 0.3, 2, 0.5), new(2, 3, 0.5, 5, 0.5), new(3, 4, 1, 5, 0.3), new(2, 4, 0.1, 3, 1),
        new(2, 4, 0.3, 5, 0.3) { Errors = [new UncertaintyEntry { Name = "scale", HalfWidthDb = 1, Distribution = ErrorDistribution.Rectangular }] },
    ];

    /// <summary>Draws pairs of campaigns and counts.</summary>
    public static HistoryRow Run(HistoryCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var found = new LotHistory[campaigns];
        Parallel.For(0, campaigns, i => found[i] = LotHistoryComparer.Of([Read(cell, "first", seed + (ulong)i), Read(cell, "second", seed + Apart + (ulong)i)], new LotQuestion()));
        HistoryPair[] between = [.. found.SelectMany(f => f.Pairs).Where(p => p.First.Campaign != p.Second.Campaign)];
        return new HistoryRow(
            cell,
            Tally.Over(found.Select(f => (bool?)f.Pairs.Any(p => p.Adjusted < LotSizeStudy.Level))),
            Tally.Over(between.Select(p => p.Tested is { } tested ? tested.ProbabilityAlike < LotSizeStudy.Level : (bool?)null)),
            Tally.Over(between.Select(p => (bool?)(WithoutReferences(p).ProbabilityAlike < LotSizeStudy.Level))));
    }

    private static CampaignLots Read(HistoryCell cell, string label, ulong seed)
    {
        var read = ReadCampaign.Of(Rehearser.Draw(cell.Plan with { Seed = seed }).Campaign, Sweeps.Averaging.Power, cell.Errors);
        return new CampaignLots(label, read.Aligned, read.Curves);
    }

    private static Equivalence WithoutReferences(HistoryPair pair)
    {
        ReadOnlySpan<Contribution> parts = [OfSpecimens(pair.First.Figures), OfSpecimens(pair.Second.Figures)];
        return new Equivalence(
            pair.First.Figures.MeanDb - pair.Second.Figures.MeanDb, WelchSatterthwaite.Combined(parts), WelchSatterthwaite.DegreesOfFreedom(parts), SameWithinMarginStudy.MarginDb);
    }

    private static Contribution OfSpecimens(LotSummary lot)
    {
        int freedom = lot.Specimens - 1;
        return new Contribution((lot.MeanIntervalDb!.Value.High - lot.MeanDb) / StudentT.Quantile(Confidence.NinetyFive.TwoSidedQuantile, freedom), freedom);
    }
}
