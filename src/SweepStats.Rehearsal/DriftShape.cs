namespace SweepStats.Rehearsal;

/// <summary>How the source moves from the first sweep of the campaign to the last.</summary>
public enum DriftShape
{
    /// <summary>The same step from each sweep to the next.</summary>
    Steady,

    /// <summary>
    /// Exponentially, as a source that was switched on late: nine tenths of the way in the first third of the campaign.
    /// </summary>
    WarmUp,
}
