using SweepStats.Quantities;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>The covered sweeps of one specimen.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="Block">Its sweeps.</param>
public sealed record SpecimenBlock(SpecimenName Name, SweepBlock Block);

/// <summary>Two sweeps whose levels all agree.</summary>
/// <param name="Kept">The first of them.</param>
/// <param name="Copy">The other.</param>
/// <param name="SameKind">
/// Both were taken for the same: the copy does not count, since a copied file is no repeat. Else both count, and one of them is
/// not what it says it is.
/// </param>
public sealed record DuplicateSweep(Sweep Kept, Sweep Copy, bool SameKind);

/// <summary>A sweep whose frequencies are not those of the common grid.</summary>
/// <param name="Sweep">The sweep.</param>
/// <param name="PointsLeftOut">How many of its points have no counterpart in every other sweep.</param>
public sealed record GridDifference(Sweep Sweep, int PointsLeftOut);

/// <summary>A campaign brought onto one grid. Immutable.</summary>
public sealed record AlignedCampaign
{
    /// <summary>Frequencies that every used sweep has.</summary>
    public required FrequencyGrid Grid { get; init; }

    /// <summary>What levels are measured against.</summary>
    public required LevelScale Scale { get; init; }

    /// <summary>Floor sweeps; null where none were taken.</summary>
    public required SweepBlock? Floor { get; init; }

    /// <summary>Reference sweeps.</summary>
    public required SweepBlock Reference { get; init; }

    /// <summary>Covered sweeps of each specimen, by lot and name.</summary>
    public required ImmutableArray<SpecimenBlock> Covered { get; init; }

    /// <summary>Sweeps that are there twice.</summary>
    public required ImmutableArray<DuplicateSweep> Duplicates { get; init; }

    /// <summary>Sweeps on other frequencies than the rest.</summary>
    public required ImmutableArray<GridDifference> GridDifferences { get; init; }

    /// <summary>What was interpolated; null where every sweep has all frequencies of the grid.</summary>
    public Interpolation? Interpolation { get; init; }

    /// <summary>Sweeps left out by the user, each with its reason.</summary>
    public required ImmutableArray<Sweep> Excluded { get; init; }

    /// <summary>Linearity and plate sweeps: read and kept, not part of the shielding.</summary>
    public required ImmutableArray<Sweep> SetAside { get; init; }

    /// <summary>Files left out because they could not be read.</summary>
    public ImmutableArray<UnreadFile> Unread { get; init; } = [];

    /// <summary>Where rows of numbers are kept.</summary>
    internal RowStore Store { get; init; } = RowStore.InMemory;

    /// <summary>All sweeps that the shielding rests on: floor, reference, covered by specimen.</summary>
    public IEnumerable<Sweep> Used() =>
        (Floor?.Sweeps ?? []).Concat(Reference.Sweeps).Concat(Covered.SelectMany(c => c.Block.Sweeps));

    /// <summary>Blocks that levels sent by the source stand in: reference, then covered by specimen.</summary>
    internal IEnumerable<SweepBlock> Signals() => [Reference, .. Covered.Select(c => c.Block)];

    /// <summary>The blocks of <see cref="Used"/>, in its order.</summary>
    internal IEnumerable<SweepBlock> Blocks() => [.. Floor is { } floor ? [floor] : Array.Empty<SweepBlock>(), .. Signals()];

    /// <summary>
    /// The analyser divided this block by itself, so that it is 0 dB everywhere: no limit of a receiver, and no life to miss.
    /// </summary>
    internal bool IsNormalised(SweepBlock block) =>
        Scale == LevelScale.DecibelRatio && Enumerable.Range(0, block.SweepCount).All(j => block[j].IndexOfAnyExcept(0.0) < 0);
}
