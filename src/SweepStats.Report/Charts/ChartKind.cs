namespace SweepStats.Report.Charts;

/// <summary>What a chart shows.</summary>
internal enum ChartKind
{
    /// <summary>Shielding of several specimens.</summary>
    Overview,

    /// <summary>Usable dynamic range.</summary>
    Range,

    /// <summary>Figures of the whole band.</summary>
    Bands,

    /// <summary>Shielding of one specimen.</summary>
    Shielding,

    /// <summary>Levels of one specimen.</summary>
    Levels,
}
