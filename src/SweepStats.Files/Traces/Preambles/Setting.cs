namespace SweepStats.Files.Traces.Preambles;

/// <summary>What a line above the data may state about the trace.</summary>
internal enum Setting
{
    /// <summary>Resolution or IF bandwidth.</summary>
    ResolutionBandwidth,

    /// <summary>A bandwidth, and not said of what.</summary>
    Bandwidth,

    /// <summary>Video bandwidth.</summary>
    VideoBandwidth,

    /// <summary>Input attenuation.</summary>
    Attenuation,

    /// <summary>Reference level.</summary>
    ReferenceLevel,

    /// <summary>Detector.</summary>
    Detector,

    /// <summary>Kind or number of averages.</summary>
    Averaging,

    /// <summary>Whether there is averaging.</summary>
    AveragingState,

    /// <summary>Number of averages.</summary>
    AverageCount,

    /// <summary>Sweep time.</summary>
    SweepTime,

    /// <summary>What a trace keeps of several sweeps: the last, the highest, the mean.</summary>
    TraceMode,

    /// <summary>A hold that is switched on by itself: "Max Hold,On".</summary>
    Hold,

    /// <summary>Preamplifier.</summary>
    Preamplifier,

    /// <summary>Power of the source.</summary>
    SourcePower,

    /// <summary>Unit of level.</summary>
    LevelUnit,

    /// <summary>Unit of frequency.</summary>
    FrequencyUnit,

    /// <summary>First frequency.</summary>
    Start,

    /// <summary>Last frequency.</summary>
    Stop,

    /// <summary>Frequency in the middle.</summary>
    Centre,

    /// <summary>Last less first frequency.</summary>
    Span,

    /// <summary>First and last frequency in one.</summary>
    Range,

    /// <summary>Distance of the frequencies.</summary>
    Step,

    /// <summary>Whether the frequencies lie at equal steps or at equal ratios.</summary>
    Spacing,

    /// <summary>What a trace shows: a level, a phase, a delay.</summary>
    Format,

    /// <summary>Number of points.</summary>
    Points,

    /// <summary>Names of the traces.</summary>
    TraceNames,

    /// <summary>Date, or date and time, of the sweep.</summary>
    Date,

    /// <summary>Time of day of the sweep.</summary>
    Time,

    /// <summary>When the file was written.</summary>
    Created,
}
