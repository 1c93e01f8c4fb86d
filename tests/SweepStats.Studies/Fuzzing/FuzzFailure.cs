namespace SweepStats.Studies.Fuzzing;

/// <summary>How reading a file can fail.</summary>
internal enum FuzzFailure
{
    /// <summary>Something was thrown.</summary>
    Exception,

    /// <summary>A second or more.</summary>
    Hang,

    /// <summary>More memory than ten times the file and a fixed allowance.</summary>
    Memory,

    /// <summary>A reading that breaks a rule.</summary>
    Invalid,
}
