using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Fields;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats;

/// <summary>
/// Every choice behind an analysis, with its default and the reason for it. Same sweeps and same plan give the same result.
/// </summary>
public sealed record AnalysisPlan
{
    /// <summary>Level of all intervals; 95 % is what laboratory reports name.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>
    /// How the receiver averages, as the campaign states it; unknown unless stated. What the analysis uses follows from it, from
    /// what the files state and from what the floor shows; where nothing tells, the intervals are the envelope of power and log
    /// averaging.
    /// </summary>
    public Averaging Averaging { get; init; } = Averaging.Unknown;

    /// <summary>Band to analyse; all frequencies unless stated.</summary>
    public FrequencyBand? Band { get; init; }

    /// <summary>
    /// Whether sweeps on other frequencies than the covered ones are interpolated; else only frequencies that all sweeps share
    /// are analysed.
    /// </summary>
    public bool Interpolate { get; init; }

    /// <summary>Shielding asked for; none unless stated.</summary>
    public Requirement? Requirement { get; init; }

    /// <summary>One-sided level for "meets" and for "fails", 0.5 or more; that of the intervals unless stated.</summary>
    public Confidence? RequirementConfidence { get; init; }

    /// <summary>
    /// How far the lower limit has to lie above the requirement to meet it: 0, since the limit allows for the uncertainty
    /// already.
    /// </summary>
    public Decibels GuardBand { get; init; } = new(0);

    /// <summary>The requirement and how sure a statement about it has to be; null where nothing is asked.</summary>
    public DecisionRule? Rule =>
        Requirement is null ? null : new DecisionRule(Requirement, RequirementConfidence ?? Confidence, GuardBand);

    /// <summary>
    /// Dynamic range wanted beyond the requirement, or beyond the shielding found where nothing is asked: 6 dB keeps the noise
    /// error below 1 dB.
    /// </summary>
    public Decibels Margin { get; init; } = new(6);

    /// <summary>Floor level as displayed, for campaigns without floor sweeps; on the scale of the sweeps.</summary>
    public double? DeclaredFloorDb { get; init; }

    /// <summary>
    /// When the floor sweeps were taken, where it is stated; else their times tell, and without times they are taken to be of one
    /// time.
    /// </summary>
    public SweepTaking FloorTaking { get; init; } = SweepTaking.Unstated;

    /// <summary>When the reference sweeps were taken, where it is stated; else their times tell.</summary>
    public SweepTaking ReferenceTaking { get; init; } = SweepTaking.Unstated;

    /// <summary>
    /// How far the floor is taken to move at most after it was measured once, in dB; the default stands beside the estimate of
    /// the floor.
    /// </summary>
    public double? FloorStabilityDb { get; init; }

    /// <summary>
    /// The steady leakage in the floor sweeps is the same with and without the specimen, and is subtracted as a voltage where
    /// sweeps carry phase.
    /// </summary>
    public bool SameLeakage { get; init; }

    /// <summary>Settings stated for the whole campaign; what a file states goes before.</summary>
    public ReceiverSettings Setup { get; init; } = ReceiverSettings.Unstated;

    /// <summary>
    /// Source level in dBm of reference and covered sweeps, where stated; what a sweep states goes before. Linearity sweeps are
    /// held against the reference by it.
    /// </summary>
    public double? SourceDbm { get; init; }

    /// <summary>
    /// Specimens that were in place and truly shield nothing; none unless stated, since their sweeps look as if taken without.
    /// </summary>
    public ImmutableArray<SpecimenName> ShieldNothing { get; init; } = [];

    /// <summary>Highest input level in dBm that the receiver shows without error, where stated.</summary>
    public double? MaximumInputDbm { get; init; }

    /// <summary>Uncertainties that repeats do not show.</summary>
    public ImmutableArray<UncertaintyEntry> Uncertainties { get; init; } = [];

    /// <summary>
    /// Frequencies at which uncertainty budgets are drawn up, each taken to the nearest analysed one; none: where each specimen's
    /// claim is weakest.
    /// </summary>
    public ImmutableArray<Hertz> BudgetFrequencies { get; init; } = [];

    /// <summary>Parts of the band in which lots are compared and specimens ranked, beside the whole of it.</summary>
    public ImmutableArray<NamedBand> NamedBands { get; init; } = [];

    /// <summary>What is asked of lots; its level is that of all intervals.</summary>
    public LotQuestion Lots { get; init; } = new();

    /// <summary>What is asked of specimens among which one is to be chosen.</summary>
    public ChoiceQuestion Choice { get; init; } = new();

    /// <summary>A field that the specimens are to keep out; null where none is stated.</summary>
    public FieldThreat? Field { get; init; }

    /// <summary>The pulse that is sent through the measured curves, and what is assumed outside the band.</summary>
    public PulseQuestion Pulse { get; init; } = new();

    /// <summary>
    /// Seed of the draws that uncertainty budgets are held against and that show which specimen is the best; any will do, but the
    /// same one gives the same figures.
    /// </summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Threads to use; the result does not depend on it.</summary>
    public int Threads { get; init; } = 1;
}
