namespace SweepStats.Files.Traces.Tables;

/// <summary>What a column holds, as far as its name tells.</summary>
internal enum ColumnKind
{
    /// <summary>The name does not tell.</summary>
    Unknown,

    /// <summary>Frequency.</summary>
    Frequency,

    /// <summary>A level, or another size that may be one once its unit is known.</summary>
    Level,

    /// <summary>
    /// Anything that is no level: a number of the row, a phase, part of a complex number, an uncertainty, a limit.
    /// </summary>
    Other,
}
