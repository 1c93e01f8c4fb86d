namespace SweepStats.Files.Traces;

/// <summary>What a person may state of a trace file that leaves a doubt, as keys of [[files]] in campaign.toml.</summary>
[Flags]
public enum StatableKeys
{
    /// <summary>Nothing that a person could state would help.</summary>
    None = 0,

    /// <summary>The column of frequencies.</summary>
    FrequencyColumn = 1,

    /// <summary>The columns of levels.</summary>
    LevelColumns = 2,

    /// <summary>The unit of frequency.</summary>
    FrequencyUnit = 4,

    /// <summary>The unit of level.</summary>
    LevelUnit = 8,
}
