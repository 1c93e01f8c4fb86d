using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Budgets;
using SweepStats.Checks;
using SweepStats.Choice;
using SweepStats.Fields;
using SweepStats.Lots;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Trends;
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
        var ground = AnalysisGround.Of(campaign, plan);
        AnalysisPlan allowed = ground.Allowed(plan);
        (ImmutableArray<ShieldingCurve> curves, ImmutableArray<BandStatement> bands) = Shielding(ground, allowed, progress);
        Evidence evidence = ground.Seen with { Curves = curves };
        ImmutableArray<Finding> findings = Checklist.Inspect(evidence, plan.Threads);
        Verdict verdict = Judge.Of(findings, curves, plan.Rule, UntestedDoubts.Of(evidence, findings), plan.Threads);
        var budgets = new BudgetQuestion(allowed.Uncertainties, plan.BudgetFrequencies, plan.Requirement, plan.Confidence);
        AlignedCampaign aligned = evidence.Campaign;
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
            Averaging = evidence.Averaging,
            Floor = evidence.Floor,
            History = evidence.History,
            FloorLife = evidence.FloorLife,
            Doubts = evidence.Doubts,
            Leakages = evidence.Leakages,
            Repeats = evidence.Repeats,
            OddRepeats = evidence.OddRepeats,
            Drifts = evidence.Drifts,
            Timing = evidence.Timing,
            Clipping = evidence.Clipping,
            SerialCorrelation = evidence.SerialCorrelation,
            Linearity = evidence.Linearity,
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

    // Each specimen stands alone and goes to its own place, so the number of threads changes nothing.
    private static (ImmutableArray<ShieldingCurve> Curves, ImmutableArray<BandStatement> Bands) Shielding(
        AnalysisGround ground, AnalysisPlan plan, IProgress<double>? progress)
    {
        AlignedCampaign campaign = ground.Seen.Campaign;
        var estimator = new ShieldingEstimator(campaign, ground.Seen.Floor, plan.Confidence, plan.Uncertainties, ground.Leakage,
            ground.Seen.SerialCorrelation, plan.Threads);
        var curves = new ShieldingCurve[campaign.Covered.Length];
        var bands = new BandStatement[curves.Length];
        int done = 0;
        Parallel.For(0, curves.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, plan.Threads) }, i =>
        {
            curves[i] = estimator.Estimate(campaign.Covered[i], ground.Seen.Doubts.Specimens[i]);
            bands[i] = BandEstimator.State(curves[i], campaign.Grid, plan.Rule, plan.Confidence);
            progress?.Report((double)Interlocked.Increment(ref done) / curves.Length);
        });
        return (ImmutableArray.Create(curves), ImmutableArray.Create(bands));
    }
}
