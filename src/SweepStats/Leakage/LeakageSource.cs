namespace SweepStats.Leakage;

/// <summary>What shows a leakage.</summary>
public enum LeakageSource
{
    /// <summary>Floor sweeps with phase: their mean voltage stays when noise is averaged away.</summary>
    FloorPhase,

    /// <summary>
    /// Floor sweeps without phase, which scatter or vary over frequency as a steady signal does and noise does not.
    /// </summary>
    FloorShape,

    /// <summary>Sweeps of a solid plate in place of the specimen.</summary>
    Plate,
}
