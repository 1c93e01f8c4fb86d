namespace SweepStats.Repeats;

/// <summary>What repeats taken one after the other are.</summary>
public enum RepeatKind
{
    /// <summary>Reference sweeps.</summary>
    Reference,

    /// <summary>Covered sweeps of a specimen that stayed where it was, or whose placements are not named.</summary>
    Covered,

    /// <summary>Covered sweeps of one placement of several.</summary>
    WithinPlacement,

    /// <summary>Placements of a specimen: means of their sweeps.</summary>
    Placement,
}
