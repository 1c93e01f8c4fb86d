using System.Runtime.InteropServices;
using SweepStats.Quantities;
using SweepStats.Storage;

namespace SweepStats.Sweeps;

/// <summary>One trace: a level at every point of a grid, and what it was taken for. Immutable.</summary>
/// <remarks>Levels are in dB on the given scale, one for every point of the grid, all finite.</remarks>
public sealed class Sweep
{
    /// <summary>Creates a sweep.</summary>
    /// <param name="name">Where it came from, for a person.</param>
    /// <param name="role">What it was taken for.</param>
    /// <param name="grid">Its frequencies.</param>
    /// <param name="levels">Its levels in dB, one a frequency.</param>
    /// <param name="scale">What they are measured against.</param>
    /// <param name="store">Where its levels are kept; in memory unless given.</param>
    /// <exception cref="ArgumentException">The number of levels differs from the grid's, or a level is not finite.</exception>
    public Sweep(string name, SweepRole role, FrequencyGrid grid, ImmutableArray<double> levels, LevelScale scale,
        RowStore? store = null)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (levels.Length != grid.Count)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"{name}: {levels.Length} levels for {grid.Count} frequencies."), nameof(levels));
        }

        for (int i = 0; i < levels.Length; i++)
        {
            if (!double.IsFinite(levels[i]))
            {
                throw new ArgumentException(FormattableString.Invariant($"{name}: the level at point {i + 1} is {levels[i]}."),
                    nameof(levels));
            }
        }

        Name = name;
        Role = role;
        Grid = grid;
        KeptLevels = (store ?? RowStore.InMemory).Keep(ImmutableCollectionsMarshal.AsArray(levels)!);
        Scale = scale;
    }

    /// <summary>
    /// Where it came from, for a person: the file within the campaign, with the column where a file holds several.
    /// </summary>
    public string Name { get; }

    /// <summary>What it was taken for.</summary>
    public SweepRole Role { get; }

    /// <summary>Its frequencies.</summary>
    public FrequencyGrid Grid { get; }

    /// <summary>Its levels in dB on <see cref="Scale"/>.</summary>
    public ImmutableArray<double> Levels => ImmutableCollectionsMarshal.AsImmutableArray(KeptLevels.Rows[0]);

    /// <summary>The same as they are kept: one row.</summary>
    internal KeptRows KeptLevels { get; }

    /// <summary>What the levels are measured against.</summary>
    public LevelScale Scale { get; }

    /// <summary>Lot of the specimen; only for covered sweeps.</summary>
    public string? Lot { get; init; }

    /// <summary>Specimen; only for covered sweeps.</summary>
    public string? Specimen { get; init; }

    /// <summary>Placement of the specimen (taken off and put back), where it was noted.</summary>
    public string? Placement { get; init; }

    /// <summary>When it was taken, where it was noted.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>Source level in dBm, where it was noted.</summary>
    public double? SourceDbm { get; init; }

    /// <summary>
    /// Phase of the voltage at each point of the grid in degrees, in whatever turn the file gives it; empty where the file
    /// carries none.
    /// </summary>
    /// <exception cref="ArgumentException">There is not one finite value for every point.</exception>
    public ImmutableArray<double> Phases { get; init => field = OnePerPoint(value, "phases"); } = [];

    /// <summary>
    /// Levels in dB of the same path looked at from its other end (S12 beside S21), at each point of the grid; empty where the
    /// file carries none.
    /// </summary>
    /// <exception cref="ArgumentException">There is not one finite value for every point.</exception>
    public ImmutableArray<double> ReverseLevels { get; init => field = OnePerPoint(value, "levels from the other end"); } = [];

    /// <summary>Receiver settings the file stated.</summary>
    public ReceiverSettings Settings { get; init; } = ReceiverSettings.Unstated;

    /// <summary>Why the sweep is left out of the analysis; null where it is used.</summary>
    public string? ExcludedBecause { get; init; }

    private ImmutableArray<double> OnePerPoint(ImmutableArray<double> values, string what)
    {
        if (values.IsDefaultOrEmpty)
        {
            return [];
        }

        if (values.Length != Grid.Count)
        {
            string counts = FormattableString.Invariant($"{values.Length} {what} for {Grid.Count} frequencies");
            throw new ArgumentException($"{Name}: {counts}.", nameof(values));
        }

        return values.All(double.IsFinite)
            ? values
            : throw new ArgumentException($"{Name}: the {what} are not all finite.", nameof(values));
    }
}
