using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Budgets;
using SweepStats.Checks;
using SweepStats.Choice;
using SweepStats.Clipping;
using SweepStats.Doubts;
using SweepStats.Fields;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Linearity;
using SweepStats.Lots;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Trends;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;

namespace SweepStats;

/// <summary>The whole flow from sweeps to verdict.</summary>
public static class Analysis
{
    /// <summary>Analyses a campaign.</summary>
    /// <param name="campaign">Sweeps as read.</param>
    /// <param name="plan">Every choice.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <exception cref="AlignmentException">The sweeps cannot be compared with each other.</exception>
    public static AnalysisResult Run(Campaign campaign, AnalysisPlan plan, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ArgumentNullException.ThrowIfNull(plan);
        AlignedCampaign all = Aligner.Align(campaign, plan.Band, plan.Interpolate, plan.Threads);
        var life = FloorLife.Of(all);
        AlignedCampaign read = life is null or { Lives: true } ? all : all with { Floor = null };
        FloorHistory? history = FloorHistory.Of(read,
            plan.FloorTaking == SweepTaking.Unstated ? campaign.FloorTaking : plan.FloorTaking, plan.FloorStabilityDb);
        AveragingInUse averaging = AveragingChoice.Of(read with { Floor = FloorAndLeakage.Noise(read) }, plan.Averaging);
        var split = FloorAndLeakage.Of(read, averaging.Averaging, history, plan.SameLeakage);
        (AlignedCampaign aligned, NoiseFloor? measured) =
            (split.Campaign, Floor(split, history, plan.DeclaredFloorDb, averaging.Averaging));
        ImmutableArray<RepeatGroup> repeats = RepeatGroups.Of(aligned, measured, plan.Threads);
        ImmutableArray<OddRepeat> odd = OddRepeats.Among(repeats);
        var together = SerialCorrelation.Of(aligned, measured, odd, plan.Threads);
        ImmutableArray<DriftTest> drifts = DriftTest.Clearest(repeats, odd);
        ReferenceTiming timing = ReferenceTimes.Of(aligned,
            plan.ReferenceTaking == SweepTaking.Unstated ? campaign.ReferenceTaking : plan.ReferenceTaking);
        CampaignClipping clipping = ClippingSearch.In(read, all.Floor, plan.Threads);
        LinearityCurve? linearity = LinearityEstimator.Of(aligned, measured, plan.SourceDbm);
        var overload = new ReferenceOverload(aligned, clipping, linearity, plan.MaximumInputDbm);
        var doubts = new CampaignDoubts
        {
            Motions = FloorMotion.Of(aligned, measured, history),
            Drift = DriftAllowance.Of(drifts, aligned, timing),
            Specimens = CampaignDoubts.OfSpecimens(aligned, measured, overload, plan.Threads),
        };
        NoiseFloor? floor = doubts.Widened(measured);
        AnalysisPlan allowed = plan with
        {
            Uncertainties =
            [.. plan.Uncertainties, .. new[] { doubts.Drift, InterpolationError.Of(aligned) }.OfType<UncertaintyEntry>()],
        };
        (ImmutableArray<ShieldingCurve> curves, ImmutableArray<BandStatement> bands) =
            Shielding(aligned, floor, new(split.Levels, doubts, together), allowed, progress);
        var evidence = new Evidence
        {
            Campaign = aligned,
            Floor = floor,
            History = history,
            FloorLife = life,
            Doubts = doubts,
            Leakages = split.Leakages,
            Repeats = repeats,
            OddRepeats = odd,
            Drifts = drifts,
            Timing = timing,
            Clipping = clipping,
            SerialCorrelation = together,
            Linearity = linearity,
            Curves = curves,
            Averaging = averaging,
            Rule = plan.Rule,
            Margin = plan.Margin,
            Setup = plan.Setup,
            SourceDbm = plan.SourceDbm,
            ShieldNothing = plan.ShieldNothing,
            MaximumInputDbm = plan.MaximumInputDbm,
            Threads = plan.Threads,
        };
        ImmutableArray<Finding> findings = Checklist.Inspect(evidence, plan.Threads);
        Verdict verdict = Judge.Of(findings, curves, plan.Rule, UntestedDoubts.Of(evidence, findings), plan.Threads);
        var budgets = new BudgetQuestion(allowed.Uncertainties, plan.BudgetFrequencies, plan.Requirement, plan.Confidence);
        var basis = new PulseBasis(aligned, curves, findings, verdict.Trust);
        var specimens = new Lazy<ImmutableArray<SpecimenSweeps>>(() =>
            [.. SideBySide.Of(curves.Length, plan.Threads, i => SpecimenSweeps.Of(aligned.Covered[i], curves[i]))]);
        return new AnalysisResult
        {
            Title = campaign.Title,
            Rehearsed = campaign.Rehearsed,
            Identity = campaign.Identity,
            Plan = plan,
            Campaign = aligned,
            Averaging = averaging,
            Floor = floor,
            History = history,
            FloorLife = life,
            Doubts = doubts,
            Leakages = split.Leakages,
            Repeats = repeats,
            OddRepeats = odd,
            Drifts = drifts,
            Timing = timing,
            Clipping = clipping,
            SerialCorrelation = together,
            Linearity = linearity,
            Curves = curves,
            Bands = bands,
            Fields = ResidualField.Of(plan.Field, new CurvesAndBands(curves, bands), findings, verdict.Trust),
            Needed = NeededShielding.Of(plan.Field, basis),
            PulsesWhenAsked = new(() => PulseEstimator.Of(basis, plan.Pulse with { Confidence = plan.Confidence }, plan.Threads)),
            Layers = verdict.Trust == Trust.Untrustworthy ? []
                : LayerComparer.Of(aligned, curves, campaign.Properties, plan.Confidence),
            Budgets = [.. SideBySide.Of(
                curves.Length, plan.Threads, i => SpecimenBudgets.Of(curves[i], bands[i], aligned.Grid, budgets))],
            LotsWhenAsked = new(() => LotComparer.Of(
                aligned, LotMembers.Of(new(curves, specimens.Value), plan.Choice.Yardstick), plan.NamedBands,
                plan.Lots with { Confidence = plan.Confidence }, plan.Threads)),
            Trend = TrendEstimator.Of(curves, aligned.Grid, campaign.Properties, plan, findings),
            ChoiceWhenAsked =
                new(() => SpecimenRanker.Of(aligned, new(curves, specimens.Value), campaign.Properties,
                    new(plan.Choice, plan.NamedBands, plan.Confidence, plan.Seed), plan.Threads)
                    ?.Until(Finding.ToSettleFirst(findings))),
            Findings = findings,
            Checks = Checklist.Runs(evidence, findings),
            Verdict = verdict,
        };
    }

    private static NoiseFloor? Floor(FloorAndLeakage split, FloorHistory? history, double? declaredDb, Averaging averaging)
    {
        if (split.Floor is not { } floor)
        {
            return declaredDb is { } level ? NoiseFloorEstimator.Declare(level, split.Campaign.Grid.Count, averaging) : null;
        }

        double shift = BandwidthShift.Db(split.Campaign);
        return floor with
        {
            LevelDb = shift == 0 ? floor.LevelDb : [.. floor.LevelDb.Select(level => level + shift)],
            BandwidthShiftDb = shift,
            HalfWidthDb = history?.HalfWidthDb ?? 0,
        };
    }

    // Each specimen stands alone and goes to its own place, so the number of threads changes nothing.
    private static (ImmutableArray<ShieldingCurve> Curves, ImmutableArray<BandStatement> Bands) Shielding(
        AlignedCampaign campaign, NoiseFloor? floor, Disturbances beside, AnalysisPlan plan, IProgress<double>? progress)
    {
        var estimator = new ShieldingEstimator(campaign, floor, plan.Confidence, plan.Uncertainties, beside.Leakage,
            beside.Together, plan.Threads);
        var curves = new ShieldingCurve[campaign.Covered.Length];
        var bands = new BandStatement[curves.Length];
        int done = 0;
        Parallel.For(0, curves.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, plan.Threads) }, i =>
        {
            curves[i] = estimator.Estimate(campaign.Covered[i], beside.Doubts.Specimens[i]);
            bands[i] = BandEstimator.State(curves[i], campaign.Grid, plan.Rule, plan.Confidence);
            progress?.Report((double)Interlocked.Increment(ref done) / curves.Length);
        });
        return (ImmutableArray.Create(curves), ImmutableArray.Create(bands));
    }

    /// <summary>What moves the shielding beside scatter and the floor.</summary>
    private sealed record Disturbances(LeakageLevels Leakage, CampaignDoubts Doubts, SerialCorrelation Together);
}
