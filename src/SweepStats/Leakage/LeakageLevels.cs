namespace SweepStats.Leakage;

/// <summary>
/// What of all leakages stands in reference and covered levels, on the scale of the sweeps, one a frequency. Immutable.
/// </summary>
public sealed record LeakageLevels
{
    /// <summary>
    /// A steady voltage of unknown phase beside the signal, as far as it shows or noise may hide it; empty where there is none
    /// anywhere.
    /// </summary>
    public ImmutableArray<LeakageLevel> Beside { get; init; } = [];

    /// <summary>Its level in dB where it shows; −∞ where none does, empty where none does anywhere.</summary>
    public ImmutableArray<double> ShownDb { get; init; } = [];

    /// <summary>
    /// What is left of a leakage that was subtracted: noise of this root mean square level, the same in all covered sweeps; empty
    /// where none was.
    /// </summary>
    public ImmutableArray<double> RemainderDb { get; init; } = [];

    /// <summary>Nothing.</summary>
    public static LeakageLevels None { get; } = new();
}
