namespace SweepStats.Report.Drawing;

/// <summary>What a chart shows.</summary>
internal enum ChartKind
{
    /// <summary>Shielding of several specimens.</summary>
    Overview,

    /// <summary>Usable dynamic range.</summary>
    Range,

    /// <summary>Figures of the whole band.</summary>
    Bands,

    /// <summary>Shielding along an ordered factor.</summary>
    Trend,

    /// <summary>Mean shielding of lots and their specimens.</summary>
    Lots,

    /// <summary>Lots over frequency.</summary>
    LotsOverFrequency,

    /// <summary>What lots promise over frequency.</summary>
    LotPromise,

    /// <summary>Scatter by level.</summary>
    Scatter,

    /// <summary>Whether means and scatters of specimens or lots go together.</summary>
    Consistency,

    /// <summary>Lots or specimens over time.</summary>
    OverTime,

    /// <summary>Ranking of specimens in a band.</summary>
    Choice,

    /// <summary>What is left of a pulse over time.</summary>
    Pulse,

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

    /// <summary>Stations heard or silent at their margins.</summary>
    Margins,
}
