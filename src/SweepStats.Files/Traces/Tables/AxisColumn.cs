using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the frequency column of a table whose columns nobody named.</summary>
internal static class AxisColumn
{
    private const int FewestCounted = 5;

    /// <summary>The column; null, with the reason among the faults, where the rows may lie the other way round.</summary>
    public static int? Find(TableSight table, Preamble preamble, FaultList faults)
    {
        int[] stated = [.. Enumerable.Range(0, table.Columns).Where(c => table.Units?.IsHertz(c) == true)];
        if (stated.Length == 1)
        {
            return stated[0];
        }

        if (table.Rows < 4 && table.Columns > 2 * table.Rows && LooksTransposed(table))
        {
            faults.Add(
                null, "the first row of numbers rises from column to column: the file may hold one row a sweep, and nothing "
                    + "names its rows", "put names with the units of the export before the rows: 'Frequency' with Hz, kHz, MHz "
                        + "or GHz in brackets, 'Level' with its unit");
            return null;
        }

        if (Likely(table, preamble) is { } likely)
        {
            faults.Assume(likely.Words);
            return likely.Column;
        }

        if (table.Rows >= FewestCounted && table.Counts(0))
        {
            faults.Add(null, "no column is named, and the first counts the rows: it may be the number of the point",
                "export the sweep with a column of frequencies; only if this column is one, name the columns above the rows: "
                    + "'Frequency' and 'Level', with their units in brackets");
            return null;
        }

        faults.Assume("no column is named; the first was taken as the frequency");
        return 0;
    }

    private static LikelyColumn? Likely(TableSight table, Preamble preamble)
    {
        int[] all = [.. Enumerable.Range(0, table.Columns)];
        int[] rising = [.. all.Where(table.Rises)];
        if (Declared(table, preamble) is { } declared)
        {
            return new(declared, $"no column is named; column {ColumnList.Number(declared)} was taken as the frequency, since it "
                + "runs from the start to the stop that the file states");
        }

        if (rising.Contains(0) && table.Counts(0) && rising.FirstOrDefault(c => c > 0 && !table.Counts(c), -1) is > 0 and var next
            && table.Columns > 2)
        {
            return new(next,
                $"no column is named; column 1 counts the rows, and column {ColumnList.Number(next)} was taken as the frequency");
        }

        if (!rising.Contains(0) && rising is [var only])
        {
            return new(only, $"no column is named; column {ColumnList.Number(only)} was taken as the frequency, since it alone "
                + "rises from row to row");
        }

        return rising.Length == 0 && all.Where(table.Falls).ToArray() is [var falling]
            ? new(falling, $"no column is named; column {ColumnList.Number(falling)} was taken as the frequency, since it alone "
                + "falls from row to row") : null;
    }

    /// <summary>
    /// The one column that runs from the start to the stop that the file states; null where none or several do.
    /// </summary>
    public static int? Declared(TableSight table, Preamble preamble)
    {
        int[] found = [.. Enumerable.Range(0, table.Columns)
            .Where(c => Runs(table, c, preamble.Start, preamble.Stop) || Runs(table, c, preamble.Stop, preamble.Start))];
        return found.Length == 1 ? found[0] : null;
    }

    private static bool Runs(TableSight table, int column, StatedNumber? from, StatedNumber? to) =>
        Matches(table.Value(0, column), from) && Matches(table.Value(table.Rows - 1, column), to);

    private static bool LooksTransposed(TableSight table)
    {
        for (int c = 1; c < table.Columns; c++)
        {
            if (table.Value(0, c) <= table.Value(0, c - 1))
            {
                return false;
            }
        }

        return table.Value(0, 0) >= 0;
    }

    // In the unit stated or as the bare number: which of them does not matter to find the column.
    private static bool Matches(double value, StatedNumber? stated) =>
        stated is { } number && (Near(value, number.Value()) || Near(value, number.Hertz()));

    private static bool Near(double value, double? stated) => stated is { } s && Math.Abs(value - s) <= 1e-6 * Math.Abs(s);

    /// <summary>A column that nothing names and that is likely the frequency, and why in words.</summary>
    private readonly record struct LikelyColumn(int Column, string Words);
}
