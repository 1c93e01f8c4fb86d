namespace SweepStats.Floor;

/// <summary>Which of several looks a detector, or a trace that is held, keeps in a reading.</summary>
public enum KeptLook
{
    /// <summary>Their average, in power or in dB; or the only one.</summary>
    Average,

    /// <summary>The highest (peak and quasi-peak detectors, maximum hold).</summary>
    Highest,

    /// <summary>The lowest (negative peak detectors, minimum hold).</summary>
    Lowest,
}
