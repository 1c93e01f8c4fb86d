namespace SweepStats.Files.Traces.Touchstone;

/// <summary>How a Touchstone file writes complex numbers.</summary>
internal enum TouchstoneFormat
{
    /// <summary>Magnitude in dB and angle.</summary>
    DecibelAngle,

    /// <summary>Magnitude and angle.</summary>
    MagnitudeAngle,

    /// <summary>Real and imaginary part.</summary>
    RealImaginary,
}
