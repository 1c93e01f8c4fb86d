namespace SweepStats.Receivers;

/// <summary>Whether an observation is evidence, or why not.</summary>
public enum EvidenceState
{
    /// <summary>It counts.</summary>
    Counts,

    /// <summary>Silent, and nobody says that it was heard without the cover.</summary>
    Uncontrolled,

    /// <summary>It was silent without the cover too.</summary>
    SilentUncovered,

    /// <summary>It was heard, although its level is stated far below its sensitivity: one of the two is wrong.</summary>
    BelowSensitivity,
}
