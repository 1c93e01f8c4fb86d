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
using SweepStats.Sweeps;
using SweepStats.Trends;
using SweepStats.Verdicts;

namespace SweepStats;

/// <summary>Everything an analysis found. Immutable.</summary>
public sealed record AnalysisResult
{
    /// <summary>Name of the campaign.</summary>
    public required string Title { get; init; }

    /// <summary>Whether the sweeps were drawn by a model and not measured.</summary>
    public bool Rehearsed { get; init; }

    /// <summary>Who tested what with which instrument, as far as it is stated.</summary>
    public TestIdentity Identity { get; init; } = TestIdentity.Unstated;

    /// <summary>The choices it rests on.</summary>
    public required AnalysisPlan Plan { get; init; }

    /// <summary>The sweeps on their common grid.</summary>
    public required AlignedCampaign Campaign { get; init; }

    /// <summary>How the receiver is taken to average, and where that is known from.</summary>
    public required AveragingInUse Averaging { get; init; }

    /// <summary>The floor; null where none was taken or declared.</summary>
    public required NoiseFloor? Floor { get; init; }

    /// <summary>When the floor was measured, and how far it may have moved; null where it was not measured.</summary>
    public required FloorHistory? History { get; init; }

    /// <summary>Whether the floor sweeps show noise; those that do not were not used. Null where there are none.</summary>
    public FloorLife? FloorLife { get; init; }

    /// <summary>What may have moved the shielding beside scatter and noise.</summary>
    public required CampaignDoubts Doubts { get; init; }

    /// <summary>What else reaches the receiver than through the specimen, by what shows it.</summary>
    public required ImmutableArray<SteadyLeakage> Leakages { get; init; }

    /// <summary>How sweeps that repeat each other differ: floor, reference, then specimens by name.</summary>
    public required ImmutableArray<RepeatGroup> Repeats { get; init; }

    /// <summary>Sweeps that are odd among their repeats.</summary>
    public required ImmutableArray<OddRepeat> OddRepeats { get; init; }

    /// <summary>
    /// How the level of reference and covered sweeps moved, clear or not; empty where too few repeat each other.
    /// </summary>
    public required ImmutableArray<DriftTest> Drifts { get; init; }

    /// <summary>
    /// Whether repeats that follow each other are alike, so that they are worth fewer than as many independent ones.
    /// </summary>
    public SerialCorrelation SerialCorrelation { get; init; } = SerialCorrelation.Untested;

    /// <summary>Readings of reference and covered sweeps that are cut off from above.</summary>
    public required CampaignClipping Clipping { get; init; }

    /// <summary>When the reference was taken, beside the covered sweeps.</summary>
    public required ReferenceTiming Timing { get; init; }

    /// <summary>
    /// How far the receiver follows the source; null where linearity and reference sweeps do not show two source levels clear of
    /// the noise.
    /// </summary>
    public required LinearityCurve? Linearity { get; init; }

    /// <summary>Shielding of each specimen, by lot and name.</summary>
    public required ImmutableArray<ShieldingCurve> Curves { get; init; }

    /// <summary>Statements over the band, one a specimen, in the same order.</summary>
    public required ImmutableArray<BandStatement> Bands { get; init; }

    /// <summary>
    /// What is left of the stated field behind each specimen, in the same order; empty where no field is stated.
    /// </summary>
    public ImmutableArray<ResidualField> Fields { get; init; } = [];

    /// <summary>
    /// Where each specimen is shown to leave no more than the tolerable field, in the same order; empty where none is stated or a
    /// fault stands against the measurement.
    /// </summary>
    public ImmutableArray<NeededShielding> Needed { get; init; } = [];

    /// <summary>What is left of the pulse behind each specimen, in the same order.</summary>
    public ImmutableArray<ResidualPulse> Pulses { get => PulsesWhenAsked.Value; init => PulsesWhenAsked = new(value); }

    /// <summary>The same, worked out when it is first asked for.</summary>
    public required Lazy<ImmutableArray<ResidualPulse>> PulsesWhenAsked { get; init; }

    /// <summary>What further layers of a cloth add, lot by lot; empty where no specimens state their layers.</summary>
    public ImmutableArray<LayerStep> Layers { get; init; } = [];

    /// <summary>Uncertainty budgets, one set a specimen, in the same order.</summary>
    public required ImmutableArray<SpecimenBudgets> Budgets { get; init; }

    /// <summary>How lots compare, and how much specimens, placements and sweeps scatter.</summary>
    public LotComparison Lots { get => LotsWhenAsked.Value; init => LotsWhenAsked = new(value); }

    /// <summary>The same, worked out when it is first asked for: whoever asks for trust alone does not wait for it.</summary>
    public required Lazy<LotComparison> LotsWhenAsked { get; init; }

    /// <summary>What an ordered factor does to the shielding; null where the plan names none.</summary>
    public FactorTrend? Trend { get; init; }

    /// <summary>Which specimen is best, as far as it can be told; null where there are not two candidates.</summary>
    public SpecimenChoice? Choice { get => ChoiceWhenAsked.Value; init => ChoiceWhenAsked = new(value); }

    /// <summary>The same, worked out when it is first asked for.</summary>
    public required Lazy<SpecimenChoice?> ChoiceWhenAsked { get; init; }

    /// <summary>Findings, gravest first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>
    /// Whether lots may be called better than others: not under a fault, and not where something was found that other figures
    /// mislead under.
    /// </summary>
    public bool MayPrefer => Verdict.Trust != Trust.Untrustworthy && Finding.ToSettleFirst(Findings).IsEmpty;

    /// <summary>Every check of the list, and which of them could not be made.</summary>
    public required ImmutableArray<CheckRun> Checks { get; init; }

    /// <summary>The answer.</summary>
    public required Verdict Verdict { get; init; }
}
