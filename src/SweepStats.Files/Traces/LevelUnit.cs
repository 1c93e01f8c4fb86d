namespace SweepStats.Files.Traces;

/// <summary>Unit in which a file gives its levels.</summary>
public enum LevelUnit
{
    /// <summary>Power in dB relative to 1 mW.</summary>
    DecibelMilliwatts,

    /// <summary>Voltage in dB relative to 1 µV.</summary>
    DecibelMicrovolts,

    /// <summary>Voltage in dB relative to 1 mV.</summary>
    DecibelMillivolts,

    /// <summary>A ratio in dB.</summary>
    Decibels,

    /// <summary>Field strength in dB relative to 1 µV/m, as a receiver with an antenna factor shows it.</summary>
    DecibelMicrovoltsPerMeter,

    /// <summary>An antenna factor in dB relative to 1/m: a correction, never the level of a sweep.</summary>
    DecibelsPerMeter,

    /// <summary>Volts.</summary>
    Volts,

    /// <summary>Millivolts.</summary>
    Millivolts,

    /// <summary>Microvolts.</summary>
    Microvolts,

    /// <summary>Watts.</summary>
    Watts,

    /// <summary>Milliwatts.</summary>
    Milliwatts,

    /// <summary>The linear magnitude of a ratio of voltages, without unit.</summary>
    LinearMagnitude,
}
