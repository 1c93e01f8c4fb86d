using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Clipping;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What the checks look at. Immutable.</summary>
public sealed record Evidence
{
    /// <summary>The sweeps on their common grid.</summary>
    public required AlignedCampaign Campaign { get; init; }

    /// <summary>The floor; null where none is known.</summary>
    public required NoiseFloor? Floor { get; init; }

    /// <summary>When the floor was measured, and how far it may have moved; null where it was not measured.</summary>
    public FloorHistory? History { get; init; }

    /// <summary>Whether the floor sweeps show noise; those that do not were not used. Null where there are none.</summary>
    public FloorLife? FloorLife { get; init; }

    /// <summary>What may have moved the shielding beside scatter and noise.</summary>
    public required CampaignDoubts Doubts { get; init; }

    /// <summary>What else reaches the receiver than through the specimen, by what shows it.</summary>
    public ImmutableArray<SteadyLeakage> Leakages { get; init; } = [];

    /// <summary>How sweeps that repeat each other differ.</summary>
    public required ImmutableArray<RepeatGroup> Repeats { get; init; }

    /// <summary>Sweeps that are odd among their repeats.</summary>
    public required ImmutableArray<OddRepeat> OddRepeats { get; init; }

    /// <summary>How their level moved.</summary>
    public required ImmutableArray<DriftTest> Drifts { get; init; }

    /// <summary>When the reference was taken, beside the covered sweeps.</summary>
    public ReferenceTiming Timing { get; init; }

    /// <summary>Whether repeats that follow each other are alike.</summary>
    public SerialCorrelation SerialCorrelation { get; init; } = SerialCorrelation.Untested;

    /// <summary>How far the receiver follows the source; null where that was not tested.</summary>
    public required LinearityCurve? Linearity { get; init; }

    /// <summary>Readings that are cut off from above.</summary>
    public required CampaignClipping Clipping { get; init; }

    /// <summary>Threads that a check may use; no finding depends on it.</summary>
    public int Threads { get; init; } = 1;

    /// <summary>Shielding of each specimen.</summary>
    public required ImmutableArray<ShieldingCurve> Curves { get; init; }

    /// <summary>How the receiver is taken to average, and where that is known from.</summary>
    public required AveragingInUse Averaging { get; init; }

    /// <summary>Shielding asked for and how sure a statement has to be; null where nothing is asked.</summary>
    public required DecisionRule? Rule { get; init; }

    /// <summary>Dynamic range wanted beyond the requirement.</summary>
    public required Decibels Margin { get; init; }

    /// <summary>Settings stated for the whole campaign.</summary>
    public ReceiverSettings Setup { get; init; } = ReceiverSettings.Unstated;

    /// <summary>Source level in dBm, where stated for the whole campaign.</summary>
    public double? SourceDbm { get; init; }

    /// <summary>Specimens that are stated to have been in place and to shield nothing.</summary>
    public ImmutableArray<SpecimenName> ShieldNothing { get; init; } = [];

    /// <summary>Highest input level in dBm that the receiver shows without error, where stated.</summary>
    public double? MaximumInputDbm { get; init; }
}
