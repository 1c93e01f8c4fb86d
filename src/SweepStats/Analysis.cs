using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Budgets;
using SweepStats.Checks;
using SweepStats.Choice;
using SweepStats.Floor;
using SweepStats.Linearity;
using SweepStats.Lots;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Sweeps;
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
        AlignedCampaign aligned = Aligner.Align(campaign, plan.Band);
        NoiseFloor? floor = Floor(aligned, plan);
        (ImmutableArray<ShieldingCurve> curves, ImmutableArray<BandStatement> bands) = Shielding(aligned, floor, plan, progress);
        ImmutableArray<RepeatGroup> repeats = RepeatGroups.Of(aligned, floor);
        ImmutableArray<OddRepeat> odd = OddRepeats.Among(repeats);
        ImmutableArray<DriftTest> drifts = DriftTest.Clearest(repeats, odd);
        LinearityCurve? linearity = LinearityEstimator.Of(aligned, floor);
        var evidence = new Evidence
        {
            Campaign = aligned,
            Floor = floor,
            Repeats = repeats,
            OddRepeats = odd,
            Drifts = drifts,
            Linearity = linearity,
            Curves = curves,
            Averaging = plan.Averaging,
            Rule = plan.Rule,
            Margin = plan.Margin,
            Setup = plan.Setup,
            MaximumInputDbm = plan.MaximumInputDbm,
        };
        ImmutableArray<Finding> findings = Checklist.Inspect(evidence);
        ImmutableArray<SpecimenSweeps> specimens = [.. aligned.Covered.Zip(curves, SpecimenSweeps.Of)];
        return new AnalysisResult
        {
            Title = campaign.Title,
            Plan = plan,
            Campaign = aligned,
            Floor = floor,
            Repeats = repeats,
            OddRepeats = odd,
            Drifts = drifts,
            Linearity = linearity,
            Curves = curves,
            Bands = bands,
            Budgets = [.. curves.Zip(bands, (c, b) => SpecimenBudgets.Of(c, b, aligned.Grid, (plan.Uncertainties, plan.BudgetFrequencies, plan.Requirement, plan.Confidence)))],
            Lots = LotComparer.Of(aligned, LotMembers.Of((curves, specimens), plan.Choice.Yardstick), plan.NamedBands, (plan.Lots with { Confidence = plan.Confidence }, plan.Threads)),
            Choice = SpecimenRanker.Of(aligned, (curves, specimens), campaign.Properties, (plan.Choice, plan.NamedBands, plan.Confidence, plan.Seed)),
            Findings = findings,
            Checks = Checklist.Runs(evidence),
            Verdict = Judge.Of(findings, curves, plan.Rule, plan.Threads),
        };
    }

    private static NoiseFloor? Floor(AlignedCampaign campaign, AnalysisPlan plan)
    {
        // Sweeps that show no noise are no floor.
        if (campaign.Floor is { } sweeps && FloorLife.Of(campaign) is { Lives: true })
        {
            NoiseFloor floor = NoiseFloorEstimator.Estimate(sweeps, plan.Averaging);
            double shift = BandwidthShift.Db(campaign);
            return shift == 0 ? floor : floor with { LevelDb = [.. floor.LevelDb.Select(level => level + shift)], BandwidthShiftDb = shift };
        }

        return plan.DeclaredFloorDb is { } level ? NoiseFloorEstimator.Declare(level, campaign.Grid.Count, plan.Averaging) : null;
    }

    // Each specimen stands alone and goes to its own place, so the number of threads changes nothing.
    private static (ImmutableArray<ShieldingCurve> Curves, ImmutableArray<BandStatement> Bands) Shielding(
        AlignedCampaign campaign, NoiseFloor? floor, AnalysisPlan plan, IProgress<double>? progress)
    {
        var estimator = new ShieldingEstimator(campaign, floor, plan.Confidence, plan.Uncertainties);
        var curves = new ShieldingCurve[campaign.Covered.Length];
        var bands = new BandStatement[curves.Length];
        int done = 0;
        Parallel.For(0, curves.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, plan.Threads) }, i =>
        {
            curves[i] = estimator.Estimate(campaign.Covered[i]);
            bands[i] = BandEstimator.State(curves[i], campaign.Grid, plan.Rule, plan.Confidence);
            progress?.Report((double)Interlocked.Increment(ref done) / curves.Length);
        });
        return (ImmutableArray.Create(curves), ImmutableArray.Create(bands));
    }
}
