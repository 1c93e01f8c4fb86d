namespace SweepStats.Sweeps;

/// <summary>When sweeps of a role were taken, beside the covered ones.</summary>
public enum SweepTaking
{
    /// <summary>Nobody said so: the times of the sweeps tell, where all have one.</summary>
    Unstated,

    /// <summary>Before the covered sweeps only, or after them only.</summary>
    Once,

    /// <summary>Before and after the covered sweeps, in the order in which they are listed.</summary>
    BeforeAndAfter,
}
