namespace SweepStats.Statistics;

/// <summary>Which of several variables share an error, and how much of each it is.</summary>
internal sealed class SharedPattern
{
    /// <param name="keys">What each variable shares; those with the same key share it, null shares nothing.</param>
    /// <param name="loadings">The part that is shared as a share of the standard deviation, 0 to 1.</param>
    public SharedPattern(IReadOnlyList<object?> keys, double[] loadings)
    {
        Loadings = loadings;
        Clusters = [.. Enumerable.Range(0, keys.Count).GroupBy(i => keys[i] ?? new object()).Select(g => g.ToArray())];
    }

    /// <summary>The places of the variables that go together.</summary>
    public int[][] Clusters { get; }

    /// <summary>λ of each variable.</summary>
    public double[] Loadings { get; }

    /// <summary>Whether anything is shared at all.</summary>
    public bool Shares => Clusters.Any(c => c.Length > 1);
}
