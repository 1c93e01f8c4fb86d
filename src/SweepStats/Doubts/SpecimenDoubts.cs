namespace SweepStats.Doubts;

/// <summary>What may have moved the shielding of one specimen beside scatter and noise. Immutable.</summary>
/// <remarks>
/// Found before the shielding is computed, so that interval, state and decision follow from it; the checks only report it.
/// </remarks>
public sealed record SpecimenDoubts
{
    /// <summary>Doubts of single readings, one a frequency; empty where there are none at all.</summary>
    public ImmutableArray<ReadingDoubts> Readings { get; init; } = [];

    /// <summary>
    /// Places of the frequencies at which the covered sweeps no longer show the reference's shape and are probably noise, rising.
    /// </summary>
    /// <remarks>These readings are doubted too.</remarks>
    public ImmutableArray<int> LostShape { get; init; } = [];

    /// <summary>No doubts.</summary>
    public static SpecimenDoubts None { get; } = new();

    /// <summary>Doubts at a frequency.</summary>
    public ReadingDoubts At(int point) => Readings.IsEmpty ? ReadingDoubts.None : Readings[point];

    /// <summary>The doubts of both at every frequency.</summary>
    public SpecimenDoubts With(ImmutableArray<ReadingDoubts> others) =>
        Readings.IsEmpty ? this with { Readings = others } : others.IsEmpty ? this
            : this with { Readings = [.. Readings.Zip(others, (a, b) => a | b)] };
}
