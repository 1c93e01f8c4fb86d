using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Clipping;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Linearity;
using SweepStats.Repeats;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats;

/// <summary>What is found in the sweeps before any shielding is computed. Immutable.</summary>
/// <param name="Seen">What the checks look at, without the curves that come of it.</param>
/// <param name="Leakage">Levels of what else reaches the receiver than through the specimen.</param>
internal sealed record AnalysisGround(Evidence Seen, LeakageLevels Leakage)
{
    /// <summary>Looks at the sweeps.</summary>
    /// <inheritdoc cref="Analysis.Run"/>
    public static AnalysisGround Of(Campaign campaign, AnalysisPlan plan)
    {
        AlignedCampaign all = Aligner.Align(campaign, plan.Band, plan.Interpolate, plan.Threads);
        var life = FloorLife.Of(all);
        AlignedCampaign read = life is null or { Lives: true } ? all : all with { Floor = null };
        FloorHistory? history = FloorHistory.Of(read,
            plan.FloorTaking == SweepTaking.Unstated ? campaign.FloorTaking : plan.FloorTaking, plan.FloorStabilityDb);
        AveragingInUse averaging = AveragingChoice.Of(read with { Floor = FloorAndLeakage.Noise(read) }, plan.Averaging);
        var split = FloorAndLeakage.Of(read, averaging.Averaging, history, plan.SameLeakage);
        (AlignedCampaign aligned, NoiseFloor? measured) =
            (split.Campaign, Measured(split, history, plan.DeclaredFloorDb, averaging.Averaging));
        ImmutableArray<RepeatGroup> repeats = RepeatGroups.Of(aligned, measured, plan.Threads);
        ImmutableArray<OddRepeat> odd = OddRepeats.Among(repeats);
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
        var seen = new Evidence
        {
            Campaign = aligned,
            Floor = doubts.Widened(measured),
            History = history,
            FloorLife = life,
            Doubts = doubts,
            Leakages = split.Leakages,
            Repeats = repeats,
            OddRepeats = odd,
            Drifts = drifts,
            Timing = timing,
            Clipping = clipping,
            SerialCorrelation = SerialCorrelation.Of(aligned, measured, odd, plan.Threads),
            Linearity = linearity,
            Curves = [],
            Averaging = averaging,
            Rule = plan.Rule,
            Margin = plan.Margin,
            Setup = plan.Setup,
            SourceDbm = plan.SourceDbm,
            ShieldNothing = plan.ShieldNothing,
            MaximumInputDbm = plan.MaximumInputDbm,
            Threads = plan.Threads,
        };
        return new AnalysisGround(seen, split.Levels);
    }

    /// <summary>The plan with the errors that were found to be allowed for.</summary>
    public AnalysisPlan Allowed(AnalysisPlan plan) => plan with
    {
        Uncertainties = [.. plan.Uncertainties,
            .. new[] { Seen.Doubts.Drift, InterpolationError.Of(Seen.Campaign) }.OfType<UncertaintyEntry>()],
    };

    private static NoiseFloor? Measured(FloorAndLeakage split, FloorHistory? history, double? declaredDb, Averaging averaging)
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
}
