using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Floor;
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

    /// <summary>How sweeps that repeat each other differ.</summary>
    public required ImmutableArray<RepeatGroup> Repeats { get; init; }

    /// <summary>Sweeps that are odd among their repeats.</summary>
    public required ImmutableArray<OddRepeat> OddRepeats { get; init; }

    /// <summary>How their level moved.</summary>
    public required ImmutableArray<DriftTest> Drifts { get; init; }

    /// <summary>Whether repeats that follow each other are alike.</summary>
    public SerialCorrelation SerialCorrelation { get; init; } = SerialCorrelation.Untested;

    /// <summary>How far the receiver follows the source; null where that was not tested.</summary>
    public required LinearityCurve? Linearity { get; init; }

    /// <summary>Shielding of each specimen.</summary>
    public required ImmutableArray<ShieldingCurve> Curves { get; init; }

    /// <summary>How the receiver averages.</summary>
    public required Averaging Averaging { get; init; }

    /// <summary>Shielding asked for and how sure a statement has to be; null where nothing is asked.</summary>
    public required DecisionRule? Rule { get; init; }

    /// <summary>Dynamic range wanted beyond the requirement.</summary>
    public required Decibels Margin { get; init; }

    /// <summary>Settings stated for the whole campaign.</summary>
    public ReceiverSettings Setup { get; init; } = ReceiverSettings.Unstated;

    /// <summary>Highest input level in dBm that the receiver shows without error, where stated.</summary>
    public double? MaximumInputDbm { get; init; }
}
