namespace SweepStats.Sweeps;

/// <summary>Receiver settings as far as they are known; null where nobody stated them. Immutable.</summary>
public sealed record ReceiverSettings
{
    /// <summary>Nothing is known.</summary>
    public static ReceiverSettings Unstated { get; } = new();

    /// <summary>Resolution bandwidth (or IF bandwidth) in Hz.</summary>
    public double? ResolutionBandwidthHz { get; init; }

    /// <summary>Video bandwidth in Hz.</summary>
    public double? VideoBandwidthHz { get; init; }

    /// <summary>Input attenuation in dB.</summary>
    public double? AttenuationDb { get; init; }

    /// <summary>Reference level in the unit of the display.</summary>
    public double? ReferenceLevel { get; init; }

    /// <summary>Detector as the file words it.</summary>
    public string? Detector { get; init; }

    /// <summary>Averaging as the file words it.</summary>
    public string? Averaging { get; init; }

    /// <summary>Number of averages; 0 or 1 where nothing is averaged.</summary>
    public int? Averages { get; init; }

    /// <summary>Sweep time in seconds.</summary>
    public double? SweepTimeSeconds { get; init; }

    /// <summary>What the trace keeps of several sweeps, as the file words it: the last, the highest, the mean.</summary>
    public string? TraceMode { get; init; }

    /// <summary>Preamplifier as the file words it.</summary>
    public string? Preamplifier { get; init; }

    /// <summary>Power of the source in dBm, where the receiver has one of its own, as a network analyser does.</summary>
    public double? SourcePowerDbm { get; init; }
}
