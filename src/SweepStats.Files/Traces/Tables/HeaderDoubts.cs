using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Whether a line above the rows names their columns, and what the rows say against it.</summary>
internal static class HeaderDoubts
{
    private const int FewestCounted = 5;

    private static readonly HashSet<string> Abscissas =
        ["x", "x-axis", "x axis", "xaxis", "x-achse", "x value", "x values", "x-value", "x-values", "x-wert", "x-werte", "xdata",
            "x data", "x-data", "abscissa", "abszisse", "abscisse", "axe x", "eje x", "asse x"];

    /// <summary>
    /// Whether the line is a header of these columns, and no setting or remark that happens to have as many words.
    /// </summary>
    public static bool IsHeader(ImmutableArray<ColumnName> names, TableSight table, Preamble preamble)
    {
        // It would be the unit of a list of levels.
        if (names is [{ EndsInSize: true }])
        {
            return false;
        }

        int frequency = Frequency(names);
        if (frequency >= 0)
        {
            return !IsRemark(names, frequency, table);
        }

        // A last setting above the rows, such as "Sweep,Off", would make a level of the column that the stated range tells as the
        // frequency.
        return AxisColumn.Declared(table, preamble) is not { } declared
            || (names[declared].Kind is not ColumnKind.Level && names.Any(n => n.Kind == ColumnKind.Level));
    }

    /// <summary>
    /// The column that a header calls by no more than its axis; null where there is none, or nothing in the file says that this
    /// axis is the frequency.
    /// </summary>
    public static int? Abscissa(ImmutableArray<ColumnName> names, Preamble preamble)
    {
        int[] found = [.. Enumerable.Range(0, names.Length).Where(i => Abscissas.Contains(names[i].Text.ToLowerInvariant()))];
        return found.Length == 1 && preamble.FrequencyUnit is not null ? found[0] : null;
    }

    /// <summary>
    /// A column without a telling name that rises beside a frequency column that only counts; null where there is none.
    /// </summary>
    public static int? IndexBeside(ImmutableArray<ColumnName> names, int frequency, TableSight table)
    {
        if (table.Rows < FewestCounted || !table.Counts(frequency))
        {
            return null;
        }

        int found = Enumerable.Range(0, names.Length)
            .FirstOrDefault(c => c != frequency && names[c].Kind == ColumnKind.Unknown && table.Rises(c) && !table.Counts(c), -1);
        return found < 0 ? null : found;
    }

    /// <summary>
    /// Whether a line such as "levels in dBµV, frequencies in MHz" may head the columns or be a remark, and the rows do not tell
    /// which.
    /// </summary>
    public static bool MayBeRemark(ImmutableArray<ColumnName> names, TableSight table)
    {
        int frequency = Frequency(names);
        return frequency > 0 && IsSentence(names) && names.Any(n => UnitProse.IsPlural(n.Text))
            && Enumerable.Range(0, names.Length).Count(table.Rises) > 1;
    }

    // Over rows the other way round it tells units and no columns.
    private static bool IsRemark(ImmutableArray<ColumnName> names, int frequency, TableSight table) =>
        IsSentence(names) && !table.Rises(frequency) && Enumerable.Range(0, names.Length).Count(table.Rises) == 1;

    private static bool IsSentence(ImmutableArray<ColumnName> names) =>
        names.All(n => n.Text.Contains(" in ", StringComparison.OrdinalIgnoreCase)
            || n.Text.Contains(" en ", StringComparison.OrdinalIgnoreCase));

    private static int Frequency(ImmutableArray<ColumnName> names)
    {
        for (int i = 0; i < names.Length; i++)
        {
            if (names[i].Kind == ColumnKind.Frequency)
            {
                return i;
            }
        }

        return -1;
    }
}
