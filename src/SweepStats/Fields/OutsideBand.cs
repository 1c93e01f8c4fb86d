namespace SweepStats.Fields;

/// <summary>
/// What is assumed of the shielding below and above the measured band, where a pulse has most of its energy and nothing was
/// measured.
/// </summary>
public enum OutsideBand
{
    /// <summary>No shielding: 0 dB. The default, since it claims nothing that was not measured.</summary>
    None,

    /// <summary>The reading at the end of the band holds on.</summary>
    Hold,

    /// <summary>The slope of the last octave goes on for a decade and then holds, never below 0 dB.</summary>
    Slope,
}
