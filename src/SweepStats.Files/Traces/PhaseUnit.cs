namespace SweepStats.Files.Traces;

/// <summary>Unit in which a file gives its phases.</summary>
public enum PhaseUnit
{
    /// <summary>Degrees.</summary>
    Degrees,

    /// <summary>Radians.</summary>
    Radians,
}
