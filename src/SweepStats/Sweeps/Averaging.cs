namespace SweepStats.Sweeps;

/// <summary>How the receiver averages its looks into one reading.</summary>
public enum Averaging
{
    /// <summary>Not stated: results are the envelope of power and log averaging.</summary>
    Unknown,

    /// <summary>Power is averaged (RMS detector, power average).</summary>
    Power,

    /// <summary>dB values are averaged (log or video averaging).</summary>
    Log,

    /// <summary>One look a reading (sample detector, no averaging).</summary>
    Sample,
}
