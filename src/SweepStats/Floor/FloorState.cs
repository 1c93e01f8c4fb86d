namespace SweepStats.Floor;

/// <summary>Whether floor sweeps show noise.</summary>
public enum FloorState
{
    /// <summary>They do.</summary>
    Alive,

    /// <summary>The lowest of the noise is cut off, so little of it that the floor holds all the same.</summary>
    PartlyClipped,

    /// <summary>So much of the noise is cut off that its level is not known.</summary>
    Clipped,

    /// <summary>
    /// They stand at one level, where the steps of the display are so coarse that noise averaged long may hide in one.
    /// </summary>
    Hidden,

    /// <summary>They stand at one level as no noise does.</summary>
    Stuck,
}
