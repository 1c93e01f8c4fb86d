namespace SweepStats.Statistics;

/// <summary>
/// How values are grouped in groups of groups: sweeps in placements in specimens in lots. Immutable; one serves all frequencies.
/// </summary>
/// <remarks>Levels run from the outermost to the innermost. Groups may differ in size at every level.</remarks>
public sealed class Nesting
{
    private readonly int[][] _groupOf;
    private readonly int[][] _parent;
    private readonly double[,] _weights;

    private Nesting(int[][] groupOf, int[][] parent, ImmutableArray<ImmutableArray<int>> sizes)
    {
        (_groupOf, _parent, Sizes) = (groupOf, parent, sizes);
        _weights = new double[sizes.Length, sizes.Length];
        for (int level = -1; level < sizes.Length - 1; level++)
        {
            for (int deeper = level + 1; deeper < sizes.Length; deeper++)
            {
                _weights[level + 1, deeper] = Weigh(level, deeper);
            }
        }
    }

    /// <summary>Levels of groups, not counting the values.</summary>
    public int LevelCount => _groupOf.Length;

    /// <summary>Number of values.</summary>
    public int ValueCount => _groupOf[0].Length;

    /// <summary>Values in each group, level by level.</summary>
    public ImmutableArray<ImmutableArray<int>> Sizes { get; }

    /// <summary>Group of a value at a level, numbered from 0 within the level.</summary>
    public int GroupOf(int level, int value) => _groupOf[level][value];

    /// <summary>The group of each value at a level.</summary>
    internal ReadOnlySpan<int> Groups(int level) => _groupOf[level];

    /// <summary>Group of the level above that holds a group.</summary>
    /// <param name="level">From 1.</param>
    /// <param name="group">Group of that level.</param>
    public int Parent(int level, int group) => _parent[level][group];

    /// <summary>Groups values.</summary>
    /// <param name="labels">
    /// For each level, outermost first, the label of each value's group. The same label in two groups above means two groups.
    /// </param>
    /// <exception cref="ArgumentException">No level, no value, or levels of different length.</exception>
    public static Nesting Of(params int[][] labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        if (labels.Length == 0 || labels[0].Length == 0 || labels.Any(l => l.Length != labels[0].Length))
        {
            throw new ArgumentException("Every level names a group for each of the same values.", nameof(labels));
        }

        var groupOf = new int[labels.Length][];
        var parent = new int[labels.Length][];
        var sizes = ImmutableArray.CreateBuilder<ImmutableArray<int>>(labels.Length);
        int[] above = new int[labels[0].Length];
        for (int level = 0; level < labels.Length; level++)
        {
            var numbers = new Dictionary<(int Above, int Label), int>();
            groupOf[level] = new int[above.Length];
            for (int i = 0; i < above.Length; i++)
            {
                (int, int) key = (above[i], labels[level][i]);
                if (!numbers.TryGetValue(key, out int number))
                {
                    numbers.Add(key, number = numbers.Count);
                }

                groupOf[level][i] = number;
            }

            parent[level] = new int[numbers.Count];
            var size = new int[numbers.Count];
            for (int i = 0; i < above.Length; i++)
            {
                parent[level][groupOf[level][i]] = above[i];
                size[groupOf[level][i]]++;
            }

            sizes.Add([.. size]);
            above = groupOf[level];
        }

        return new Nesting(groupOf, parent, sizes.MoveToImmutable());
    }

    /// <summary>
    /// Σ over the groups of a level, and the groups inside them of a deeper one, of (values in the inner)²/(values in the outer):
    /// how often the variance of the deeper level is in the sum of squares of the means of the other.
    /// </summary>
    /// <param name="level">−1 for all values as one group.</param>
    /// <param name="deeper">A level below it.</param>
    internal double Weight(int level, int deeper) => _weights[level + 1, deeper];

    private double Weigh(int level, int deeper)
    {
        double sum = 0;
        for (int group = 0; group < Sizes[deeper].Length; group++)
        {
            int outer = group;
            for (int up = deeper; up > Math.Max(level, 0); up--)
            {
                outer = Parent(up, outer);
            }

            double inside = Sizes[deeper][group];
            sum += inside * inside / (level < 0 ? ValueCount : Sizes[level][outer]);
        }

        return sum;
    }

    internal void Require(ReadOnlySpan<double> values)
    {
        if (values.Length != ValueCount)
        {
            throw new ArgumentException($"{ValueCount} values are grouped, {values.Length} were given.", nameof(values));
        }

        if (Sizes[^1].Length == ValueCount || Sizes[0].Length < 2
            || Enumerable.Range(1, LevelCount - 1).Any(l => Sizes[l].Length == Sizes[l - 1].Length))
        {
            throw new ArgumentException("Each level needs a group that holds two of the level below, and the outermost two "
                + "groups: else two variances cannot be told apart.", nameof(values));
        }
    }
}
