namespace SweepStats.Report.Text;

/// <summary>A table on the console: columns as wide as their cells, numbers and all else to the left.</summary>
public static class TextTable
{
    private const string Gap = "  ";

    /// <summary>One line a row, indented, the header first; no blanks at the ends.</summary>
    /// <param name="columns">Names of the columns.</param>
    /// <param name="rows">A cell a column each.</param>
    public static IEnumerable<string> Of(IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(columns);
        IReadOnlyList<string>[] all = [columns, .. rows];
        int[] widths = [.. columns.Select((_, c) => all.Max(r => r[c].Length))];
        return all.Select(
            row => (Gap + string.Join(Gap, row.Select((cell, c) => PlainText.Of(cell).PadRight(widths[c])))).TrimEnd());
    }
}
