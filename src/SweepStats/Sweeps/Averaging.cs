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

    /// <summary>
    /// The highest of several looks is kept (peak or quasi-peak detector, maximum hold): noise reads too high, a signal hardly
    /// does.
    /// </summary>
    Peak,

    /// <summary>The lowest of several looks is kept (negative peak detector, minimum hold): noise reads far too low.</summary>
    Lowest,
}
