namespace SweepStats.Files.Traces;

/// <summary>Units that a file does not say and campaign.toml can.</summary>
[Flags]
internal enum UnstatedUnits
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>That of frequency.</summary>
    Frequency = 1,

    /// <summary>That of level.</summary>
    Level = 2,
}
