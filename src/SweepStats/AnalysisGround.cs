using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Clipping;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Linearity;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats;

/// <summary>What is found in the sweeps before any shielding is computed. Immutable.</summary>
internal sealed record AnalysisGround
{
    /// <summary>The sweeps on their common grid, without what is no noise among the floor sweeps.</summary>
    public required AlignedCampaign Campaign { get; init; }

    /// <summary>The floor, widened by what may have moved it; null where none is known.</summary>
    public required NoiseFloor? Floor { get; init; }

    /// <summary>When the floor was measured, and how far it may have moved; null where it was not measured.</summary>
    public required FloorHistory? History { get; init; }

    /// <summary>Whether the floor sweeps show noise; null where there are none.</summary>
    public required FloorLife? Life { get; init; }

    /// <summary>How the receiver is taken to average, and where that is known from.</summary>
    public required AveragingInUse Averaging { get; init; }

    /// <summary>What else reaches the receiver than through the specimen.</summary>
    public required FloorAndLeakage Split { get; init; }

    /// <summary>How sweeps that repeat each other differ.</summary>
    public required ImmutableArray<RepeatGroup> Repeats { get; init; }

    /// <summary>Sweeps that are odd among their repeats.</summary>
    public required ImmutableArray<OddRepeat> Odd { get; init; }

    /// <summary>Whether repeats that follow each other are alike.</summary>
    public required SerialCorrelation Together { get; init; }

    /// <summary>How their level moved.</summary>
    public required ImmutableArray<DriftTest> Drifts { get; init; }

    /// <summary>When the reference was taken, beside the covered sweeps.</summary>
    public required ReferenceTiming Timing { get; init; }

    /// <summary>Readings that are cut off from above.</summary>
    public required CampaignClipping Clipping { get; init; }

    /// <summary>How far the receiver follows the source; null where that was not tested.</summary>
    public required LinearityCurve? Linearity { get; init; }

    /// <summary>What may have moved the shielding beside scatter and noise.</summary>
    public required CampaignDoubts Doubts { get; init; }

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
        return new AnalysisGround
        {
            Campaign = aligned,
            Floor = doubts.Widened(measured),
            History = history,
            Life = life,
            Averaging = averaging,
            Split = split,
            Repeats = repeats,
            Odd = odd,
            Together = SerialCorrelation.Of(aligned, measured, odd, plan.Threads),
            Drifts = drifts,
            Timing = timing,
            Clipping = clipping,
            Linearity = linearity,
            Doubts = doubts,
        };
    }

    /// <summary>The plan with the errors that were found to be allowed for.</summary>
    public AnalysisPlan Allowed(AnalysisPlan plan) => plan with
    {
        Uncertainties =
        [.. plan.Uncertainties, .. new[] { Doubts.Drift, InterpolationError.Of(Campaign) }.OfType<UncertaintyEntry>()],
    };

    /// <summary>What the checks look at.</summary>
    /// <param name="curves">Shielding of each specimen.</param>
    /// <param name="plan">Every choice.</param>
    public Evidence Seen(ImmutableArray<ShieldingCurve> curves, AnalysisPlan plan) => new()
    {
        Campaign = Campaign,
        Floor = Floor,
        History = History,
        FloorLife = Life,
        Doubts = Doubts,
        Leakages = Split.Leakages,
        Repeats = Repeats,
        OddRepeats = Odd,
        Drifts = Drifts,
        Timing = Timing,
        Clipping = Clipping,
        SerialCorrelation = Together,
        Linearity = Linearity,
        Curves = curves,
        Averaging = Averaging,
        Rule = plan.Rule,
        Margin = plan.Margin,
        Setup = plan.Setup,
        SourceDbm = plan.SourceDbm,
        ShieldNothing = plan.ShieldNothing,
        MaximumInputDbm = plan.MaximumInputDbm,
        Threads = plan.Threads,
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
