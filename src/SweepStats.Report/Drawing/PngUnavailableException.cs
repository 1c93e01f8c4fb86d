namespace SweepStats.Report.Drawing;

/// <summary>PNG charts cannot be drawn on this machine; the message says what to install. SVG charts are not concerned.</summary>
public sealed class PngUnavailableException : Exception
{
    /// <summary>Creates the exception.</summary>
    public PngUnavailableException()
    {
    }

    /// <summary>Creates the exception with what is missing and what to do.</summary>
    public PngUnavailableException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with its cause.</summary>
    public PngUnavailableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
