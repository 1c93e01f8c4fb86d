namespace SweepStats.Repeats;

/// <summary>What a drift is looked for along.</summary>
public enum DriftAlong
{
    /// <summary>The time of each sweep, in hours since the first.</summary>
    Clock,

    /// <summary>The order of the sweeps in their group, from 0 to 1: a steady drift of sweeps taken one after the other.</summary>
    Order,

    /// <summary>The first half of a group against the second, 0 and 1: sweeps taken before and after something else.</summary>
    Halves,
}
