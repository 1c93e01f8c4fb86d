namespace SweepStats.Files.Traces;

/// <summary>Unit in which a file gives its frequencies.</summary>
public enum FrequencyUnit
{
    /// <summary>Hz.</summary>
    Hertz,

    /// <summary>10³ Hz.</summary>
    Kilohertz,

    /// <summary>10⁶ Hz.</summary>
    Megahertz,

    /// <summary>10⁹ Hz.</summary>
    Gigahertz,
}
