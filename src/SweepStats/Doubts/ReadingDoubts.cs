namespace SweepStats.Doubts;

/// <summary>What stands against taking a reading at one frequency for a value.</summary>
[Flags]
public enum ReadingDoubts
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The reference is clipped or compressed: it reads too low, and the shielding is at least what is shown.</summary>
    ReferenceOverloaded = 1,

    /// <summary>The covered level is clipped from above: the specimen may shield less than is shown.</summary>
    CoveredOverloaded = 2,

    /// <summary>The covered level is clipped from below, or does not live: the specimen may shield more than is shown.</summary>
    CoveredAtBottom = 4,

    /// <summary>
    /// The covered level is the receiver's noise, which has risen since the floor was measured, or lies far above what was taken
    /// for the floor.
    /// </summary>
    FloorMoved = 8,
}
