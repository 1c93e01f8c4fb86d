using System.Globalization;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Columns as messages list them: number and name.</summary>
internal static class ColumnList
{
    private const int MostListed = 24;
    private const int LongestName = 60;

    /// <summary>The columns at these places from 0, up to 24, each as its number from 1 and its name.</summary>
    public static string Of(ImmutableArray<ColumnName> names, IEnumerable<int> indices) =>
        string.Join(", ",
            indices.Take(MostListed + 1)
                .Select((i, k) =>
                    k == MostListed ? "…" : names[i].Text.Length > 0 ? $"{Number(i)} '{Short(names[i].Text)}'" : Number(i)));

    /// <summary>Number of a column as people count, from 1.</summary>
    public static string Number(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);

    private static string Short(string name) => name.Length <= LongestName ? name : name[..LongestName] + "…";
}
