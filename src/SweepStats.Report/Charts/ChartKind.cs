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

    /// <summary>What each source contributes to the uncertainty.</summary>
    Budget,

    /// <summary>Offsets of repeated sweeps.</summary>
    Offsets,

    /// <summary>What is left of the sweeps of one group without their offsets.</summary>
    Residuals,

    /// <summary>How far the receiver follows the source.</summary>
    Linearity,

    /// <summary>Shielding of one specimen.</summary>
    Shielding,

    /// <summary>Levels of one specimen.</summary>
    Levels,
}
