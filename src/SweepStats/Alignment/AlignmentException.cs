namespace SweepStats.Alignment;

/// <summary>The sweeps of a campaign cannot be compared with each other; the message says why and what to do.</summary>
public sealed class AlignmentException : Exception
{
    /// <summary>Creates the exception.</summary>
    public AlignmentException()
    {
    }

    /// <summary>Creates the exception with what is wrong and what to do.</summary>
    public AlignmentException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with its cause.</summary>
    public AlignmentException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
