using System.Collections.Immutable;
using System.Globalization;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Columns as messages list them: number and name.</summary>
internal static class ColumnList
{
    public static string Of(ImmutableArray<ColumnName> names, IEnumerable<int> indices) =>
        string.Join(", ", indices.Select(i => names[i].Text.Length > 0 ? $"{Number(i)} '{names[i].Text}'" : Number(i)));

    public static string Number(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);
}
