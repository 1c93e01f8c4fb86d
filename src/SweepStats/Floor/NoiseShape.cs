namespace SweepStats.Floor;

/// <summary>What the distribution of floor readings tells of the detector.</summary>
public enum NoiseShape
{
    /// <summary>
    /// It may be averages or kept looks: too few readings, too little scatter, or a scatter at which both lean alike.
    /// </summary>
    Untold,

    /// <summary>Averages, or single looks: the readings lean as those do and not as kept looks would.</summary>
    Averages,

    /// <summary>The highest of several looks: the readings lean upward, as no average does.</summary>
    Highest,

    /// <summary>
    /// The lowest of several averages: the readings lean further down than averages do. The lowest of several single looks leans
    /// as a single look does and cannot be told.
    /// </summary>
    Lowest,
}
