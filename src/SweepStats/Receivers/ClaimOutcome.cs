namespace SweepStats.Receivers;

/// <summary>What becomes of a claim that the shielding is at least so much.</summary>
public enum ClaimOutcome
{
    /// <summary>The lower bound reaches it.</summary>
    Supported,

    /// <summary>The upper bound lies below it.</summary>
    Refuted,

    /// <summary>Neither.</summary>
    NotShown,
}
