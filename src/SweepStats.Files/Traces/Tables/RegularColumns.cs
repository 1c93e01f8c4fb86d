using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Tells a table without frequencies, whose range the lines above state.</summary>
internal static class RegularColumns
{
    /// <summary>
    /// Whether no column can be the frequency while its range is stated: none is named so, none begins and ends there, none rises
    /// but the number of the row.
    /// </summary>
    /// <param name="names">The columns.</param>
    /// <param name="named">Whether a header names them.</param>
    /// <param name="table">The table.</param>
    /// <param name="preamble">What the lines above state.</param>
    public static bool Apply(ImmutableArray<ColumnName> names, bool named, TableSight table, Preamble preamble)
    {
        if (table.Columns == 1)
        {
            return names[0].Kind != ColumnKind.Frequency;
        }

        if (!RegularAxis.IsStated(preamble) || names.Any(n => n.Kind == ColumnKind.Frequency)
            || table.Units?.InHertz.Contains(true) == true || AxisColumn.Declared(table, preamble) is not null)
        {
            return false;
        }

        return Enumerable.Range(0, table.Columns).All(c => (named && names[c].Kind != ColumnKind.Unknown) || table.Counts(c)
            || !(named || table.Rises(c) || table.Falls(c)));
    }
}
