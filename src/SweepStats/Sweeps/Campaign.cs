using SweepStats.Storage;

namespace SweepStats.Sweeps;

/// <summary>All sweeps of one measurement campaign, excluded ones too, in the order they were listed. Immutable.</summary>
/// <param name="Title">Name for people.</param>
/// <param name="Sweeps">Every sweep that was read.</param>
public sealed record Campaign(string Title, ImmutableArray<Sweep> Sweeps)
{
    /// <summary>Whether its sweeps were drawn by a model and not measured.</summary>
    public bool Rehearsed { get; init; }

    /// <summary>Who tested what with which instrument, as far as it is stated.</summary>
    public TestIdentity Identity { get; init; } = TestIdentity.Unstated;

    /// <summary>When its floor sweeps were taken, where that is known of itself; what the plan states goes before.</summary>
    public SweepTaking FloorTaking { get; init; } = SweepTaking.Unstated;

    /// <summary>When its reference sweeps were taken, where that is known of itself; what the plan states goes before.</summary>
    public SweepTaking ReferenceTaking { get; init; } = SweepTaking.Unstated;

    /// <summary>What else is known of the specimens, such as price or weight; empty cells have no entry.</summary>
    public ImmutableArray<SpecimenProperty> Properties { get; init; } = [];

    /// <summary>Where the rows of numbers of its analysis are kept; in memory unless stated.</summary>
    public RowStore Store { get; init; } = RowStore.InMemory;

    /// <summary>Files left out because they could not be read.</summary>
    public ImmutableArray<UnreadFile> Unread { get; init; } = [];
}
