using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A sweep that is to be taken.</summary>
internal sealed record PlannedSweep(SweepRole Role, string Path)
{
    /// <summary>The specimen in the way; null where there is none.</summary>
    public TrueShielding? Behind { get; init; }

    /// <summary>Name of the placement; null where placements are not named.</summary>
    public string? Placement { get; init; }

    /// <summary>Number of the placement in the whole campaign; sweeps of one placement share its offset.</summary>
    public int PlacementNumber { get; init; }

    /// <summary>Source level in dBm where it is not that of the reference.</summary>
    public double? SourceDbm { get; init; }

    /// <summary>Number within its role, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Number of the stream its levels are drawn from.</summary>
    public ulong Stream { get; init; }
}
