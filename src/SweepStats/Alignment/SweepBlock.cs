using System.Runtime.InteropServices;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>
/// Sweeps of one kind on one grid, columnar: one row of levels in dB a sweep, the sweep's own where it has no other frequencies.
/// Immutable.
/// </summary>
public sealed class SweepBlock
{
    private readonly KeptRows[] _levels;
    private readonly KeptRows[]? _phases;
    private readonly KeptRows[]? _reverse;
    private readonly Lazy<double> _stepDb;
    private readonly Lazy<UsualSteps> _usualSteps;
    private readonly Lazy<Extremes[]> _extremesDb;
    private readonly Lazy<Extremes> _allExtremesDb;
    private readonly Lazy<KeptRows> _means;

    /// <param name="sweeps">The sweeps.</param>
    /// <param name="pointCount">Number of frequencies.</param>
    /// <param name="store">Where rows found from its own are kept.</param>
    /// <param name="levels">A row of levels for each sweep, kept by itself.</param>
    /// <param name="phases">The same of phases; null where not every sweep has them.</param>
    /// <param name="reverse">The same of levels from the other end; null where not every sweep has them.</param>
    internal SweepBlock(
        ImmutableArray<Sweep> sweeps, int pointCount, RowStore store, KeptRows[] levels, KeptRows[]? phases = null,
        KeptRows[]? reverse = null)
    {
        Sweeps = sweeps;
        PointCount = pointCount;
        Store = store;
        (_levels, _phases, _reverse) = (levels, phases, reverse);
        _stepDb = new Lazy<double>(() => DisplayStep.Found(this));
        _usualSteps =
            new Lazy<UsualSteps>(() => _levels.Aggregate(UsualSteps.All, (steps, row) => steps.And(UsualSteps.Of(row.Rows[0]))));
        _extremesDb = new Lazy<Extremes[]>(() => [.. Enumerable.Range(0, SweepCount).Select(j => Extremes.Of(this[j]))]);
        _means = new Lazy<KeptRows>(() => store.Keep(Mean(Enumerable.Range(0, SweepCount))));
        _allExtremesDb =
            new Lazy<Extremes>(() => new Extremes(_extremesDb.Value.Min(e => e.Lowest), _extremesDb.Value.Max(e => e.Highest)));
    }

    /// <summary>The sweeps, in campaign order; their own levels are on their own grids.</summary>
    public ImmutableArray<Sweep> Sweeps { get; }

    /// <summary>Number of sweeps, at least 1.</summary>
    public int SweepCount => Sweeps.Length;

    /// <summary>Number of frequencies.</summary>
    public int PointCount { get; }

    /// <summary>Where rows found from its own are kept.</summary>
    internal RowStore Store { get; }

    /// <summary>The placement of each sweep, numbered from 0 as they come; sweeps without a placement's name form one.</summary>
    internal int[] Placements()
    {
        List<string?> names = [];
        var numbers = new int[SweepCount];
        for (int j = 0; j < numbers.Length; j++)
        {
            numbers[j] = names.IndexOf(Sweeps[j].Placement);
            if (numbers[j] < 0)
            {
                numbers[j] = names.Count;
                names.Add(Sweeps[j].Placement);
            }
        }

        return numbers;
    }

    /// <summary>The step in which its levels are shown, found once (<see cref="DisplayStep.Of"/>).</summary>
    internal double StepDb => _stepDb.Value;

    /// <summary>The lowest level in dB, found once: each block is held against all others of a campaign.</summary>
    internal double LowestDb => _allExtremesDb.Value.Lowest;

    /// <summary>The highest level in dB.</summary>
    internal double HighestDb => _allExtremesDb.Value.Highest;

    /// <summary>The usual steps that all its levels fit in, found once.</summary>
    internal UsualSteps UsualSteps => _usualSteps.Value;

    /// <summary>The lowest and the highest level of a sweep in dB, found once.</summary>
    internal Extremes ExtremesDb(int sweep) => _extremesDb.Value[sweep];

    /// <summary>Mean level in dB of some of the sweeps at each frequency, sweep by sweep as they lie in memory.</summary>
    /// <param name="rows">Their places, at least one; summed in this order.</param>
    internal ImmutableArray<double> Means(IReadOnlyList<int> rows) =>
        AreAll(rows) ? Means() : ImmutableCollectionsMarshal.AsImmutableArray(Mean(rows));

    /// <summary>Mean level in dB of all sweeps at each frequency, found once.</summary>
    internal ImmutableArray<double> Means() => ImmutableCollectionsMarshal.AsImmutableArray(_means.Value.Rows[0]);

    private bool AreAll(IReadOnlyList<int> rows)
    {
        for (int j = 0; j < rows.Count; j++)
        {
            if (rows[j] != j)
            {
                return false;
            }
        }

        return rows.Count == SweepCount;
    }

    private double[] Mean(IEnumerable<int> rows)
    {
        var sums = new ColumnSums(PointCount);
        foreach (int row in rows)
        {
            sums.Add(this[row]);
        }

        return sums.Means();
    }

    /// <summary>Whether every sweep carries the phase of its voltage.</summary>
    public bool HasPhases => _phases is not null;

    /// <summary>Whether every sweep carries the level of the same path from its other end.</summary>
    public bool HasReverse => _reverse is not null;

    /// <summary>Levels of a sweep in dB.</summary>
    public ReadOnlySpan<double> this[int sweep] => _levels[sweep].Rows[0];

    /// <summary>The same as they lie in memory, for reading several rows together. Not to be changed.</summary>
    internal double[] Row(int sweep) => _levels[sweep].Rows[0];

    /// <summary>Levels of a sweep at some frequencies: the row itself where these are all.</summary>
    /// <param name="sweep">Which sweep.</param>
    /// <param name="places">Places of the frequencies, each once, in order.</param>
    internal double[] Row(int sweep, ReadOnlySpan<int> places) =>
        places.Length == PointCount ? Row(sweep) : RowPart.At(this[sweep], places);

    /// <summary>Levels of a sweep at neighbouring frequencies, without the rest of it.</summary>
    /// <param name="sweep">Which sweep.</param>
    /// <param name="first">Place of the first frequency.</param>
    /// <param name="levels">Room for them.</param>
    internal void Read(int sweep, int first, Span<double> levels) => _levels[sweep].Read(0, first, levels);

    /// <summary>Phases of a sweep in degrees, as its file turns them; only where <see cref="HasPhases"/>.</summary>
    /// <exception cref="InvalidOperationException">Not every sweep of the block has phases.</exception>
    public ReadOnlySpan<double> Phases(int sweep) =>
        (_phases ?? throw new InvalidOperationException("Not every sweep of the block has phases."))[sweep].Rows[0];

    /// <summary>
    /// Levels of a sweep in dB from the other end of its path (S12 beside S21); only where <see cref="HasReverse"/>.
    /// </summary>
    /// <exception cref="InvalidOperationException">Not every sweep of the block has them.</exception>
    public ReadOnlySpan<double> Reverse(int sweep) =>
        (_reverse ?? throw new InvalidOperationException("Not every sweep has levels from its other end."))[sweep].Rows[0];
}
