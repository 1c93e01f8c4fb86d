namespace SweepStats.Shielding;

/// <summary>What is known of the shielding at one frequency.</summary>
internal enum ReadingKind
{
    /// <summary><see cref="ShieldingReading.Measured"/>.</summary>
    Measured,

    /// <summary><see cref="ShieldingReading.AtLeast"/>.</summary>
    AtLeast,

    /// <summary><see cref="ShieldingReading.Unrepeated"/>.</summary>
    Unrepeated,

    /// <summary><see cref="ShieldingReading.Unreadable"/>.</summary>
    Unreadable,
}
