namespace SweepStats.Trends;

/// <summary>Why a trend is not held against the requirement, or nothing is told at some frequency.</summary>
public enum TrendObstacle
{
    /// <summary>Nothing stands against it.</summary>
    None,

    /// <summary>A fault stands against the measurement: nothing is claimed until it is mended.</summary>
    Faults,

    /// <summary>The reference does not repeat, so the error of the level is not known.</summary>
    ReferenceOnce,

    /// <summary>Specimens of a lot lie at a level of their own about the line, so that they are not independent.</summary>
    LotsApart,

    /// <summary>No straight line holds, and no value has two specimens that would show the scatter.</summary>
    NoRepeats,

    /// <summary>Frequencies that may have been asked about were left out.</summary>
    FrequenciesLeftOut,

    /// <summary>Bounds below the requirement: how much more the specimens shield is not known.</summary>
    Hidden,

    /// <summary>Something that was found could overturn the decision.</summary>
    Overturned,
}
