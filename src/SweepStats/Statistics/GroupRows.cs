namespace SweepStats.Statistics;

/// <summary>What belongs to each of several groups, in a row of its own.</summary>
internal static class GroupRows
{
    /// <summary>The rows; each keeps the order of what it holds.</summary>
    /// <param name="values">All of it.</param>
    /// <param name="groups">The group of each, numbered from 0.</param>
    public static T[][] Of<T>(ReadOnlySpan<T> values, ReadOnlySpan<int> groups)
    {
        var sizes = new int[values.Length];
        int count = 0;
        foreach (int group in groups)
        {
            sizes[group]++;
            count = Math.Max(count, group + 1);
        }

        var rows = new T[count][];
        for (int g = 0; g < count; g++)
        {
            rows[g] = new T[sizes[g]];
        }

        for (int i = values.Length - 1; i >= 0; i--)
        {
            rows[groups[i]][--sizes[groups[i]]] = values[i];
        }

        return rows;
    }
}
