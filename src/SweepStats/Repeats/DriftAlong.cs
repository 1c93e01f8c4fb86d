namespace SweepStats.Repeats;

/// <summary>What a drift is looked for along.</summary>
public enum DriftAlong
{
    /// <summary>The time of each sweep, in hours since the first.</summary>
    Clock,

    /// <summary>Time as a device warms up, from 0 to 1: nine tenths of the way in the first third.</summary>
    ClockWarmUp,

    /// <summary>
    /// The order of the sweeps in their group, from 0 to 1: a steady drift of sweeps taken one after the other.
    /// </summary>
    Order,

    /// <summary>Order as a device warms up, from 0 to 1.</summary>
    OrderWarmUp,

    /// <summary>The first half of a group against the second, 0 and 1: sweeps taken before and after something else.</summary>
    Halves,
}
