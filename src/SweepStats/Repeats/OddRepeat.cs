using SweepStats.Quantities;

namespace SweepStats.Repeats;

/// <summary>A sweep that differs from those that repeat it by more than they differ among each other. Immutable.</summary>
public sealed record OddRepeat
{
    /// <summary>The sweeps it belongs to.</summary>
    public required RepeatGroup Group { get; init; }

    /// <summary>The sweep.</summary>
    public required RepeatedSweep Sweep { get; init; }

    /// <summary>Whether it is off as a whole; else its shape is another.</summary>
    public required bool ByOffset { get; init; }

    /// <summary>
    /// By how much: its distance from the middle of the group, or the root mean square that its shape differs by beyond the
    /// usual.
    /// </summary>
    public required Decibels Size { get; init; }

    /// <summary>Sweeps against whose scatter it was held, all groups together.</summary>
    public required int SweepCount { get; init; }

    /// <summary>Distance from the rest of its group against that scatter: Student's t.</summary>
    public required double T { get; init; }

    /// <summary>Degrees of freedom of that scatter.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Chance of any sweep as far out without one that is odd.</summary>
    public required double Probability { get; init; }

    /// <summary>Extreme studentised deviate within its own group; null where the group is too small to show one.</summary>
    public required double? Deviate { get; init; }

    /// <summary>What that deviate has to pass.</summary>
    public required double? CriticalDeviate { get; init; }
}
