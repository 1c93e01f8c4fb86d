using System.Collections.Immutable;

namespace SweepStats.Leakage;

/// <summary>What of all leakages stands in reference and covered levels, in dB on the scale of the sweeps, one a frequency. Immutable.</summary>
public sealed record LeakageLevels
{
    /// <summary>A steady voltage of unknown phase beside the signal; −∞ where none shows, empty where none does anywhere.</summary>
    public ImmutableArray<double> BesideDb { get; init; } = [];

    /// <summary>What is left of a leakage that was subtracted: noise of this root mean square level, the same in all covered sweeps; empty where none was.</summary>
    public ImmutableArray<double> RemainderDb { get; init; } = [];

    /// <summary>Nothing.</summary>
    public static LeakageLevels None { get; } = new();
}
