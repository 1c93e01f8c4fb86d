namespace SweepStats.Receivers;

/// <summary>Where the level at a receiver without the cover comes from.</summary>
public enum LevelOrigin
{
    /// <summary>Stated as a level at the receiver's input.</summary>
    Level,

    /// <summary>From a field strength and the antenna's factor.</summary>
    Field,

    /// <summary>Reckoned from power and distance as if nothing but free space lay between: no surer than its uncertainty, and
    /// often too high.</summary>
    FreeSpace,
}
