using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the column of frequencies, by its name or else by its numbers.</summary>
internal sealed class FrequencyColumn(TableSight table, Preamble preamble, FaultList faults)
{
    private const string NameIt = "name it as frequency_column under [[files]] in campaign.toml";

    /// <summary>Its place from 0; null, with the reason among the faults, where nobody can tell.</summary>
    /// <param name="names">The names of the columns.</param>
    /// <param name="named">Whether the file names them.</param>
    public int? Find(ImmutableArray<ColumnName> names, bool named)
    {
        int[] found = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Kind == ColumnKind.Frequency)];
        return found.Length switch
        {
            1 => found[0],
            > 1 => OneOf(found, names),
            _ => named ? Unnamed(names) : AxisColumn.Find(table, preamble, faults),
        };
    }

    private int? OneOf(int[] found, ImmutableArray<ColumnName> names)
    {
        if (found.All(c => names[c].FrequencyUnit == names[found[0]].FrequencyUnit && table.AreEqual(c, found[0])))
        {
            faults.Assume("the frequency stands beside each trace; the first column of it was read");
            return found[0];
        }

        Ask($"more than one column looks like a frequency: {ColumnList.Of(names, found)}",
            $"{NameIt}, or keep one frequency column a file", ColumnList.Of(names, found), StatableKeys.FrequencyColumn);
        return null;
    }

    // The header names the columns, and none as the frequency.
    private int? Unnamed(ImmutableArray<ColumnName> names)
    {
        if ((AxisColumn.Declared(table, preamble) ?? HeaderDoubts.Abscissa(names, preamble)) is { } abscissa)
        {
            faults.Assume($"column {ColumnList.Of(names, [abscissa])} was taken as the frequency, as the lines above tell");
            return abscissa;
        }

        string all = ColumnList.Of(names, Enumerable.Range(0, names.Length));
        Ask($"no column is named as the frequency among {all}",
            $"if one of them is, {NameIt}, with its frequency_unit; or name it 'Frequency' in the file, with the "
                + "unit of the export in brackets: Hz, kHz, MHz or GHz", all,
            StatableKeys.FrequencyColumn | StatableKeys.FrequencyUnit);
        return null;
    }

    private void Ask(string problem, string remedy, string candidates, StatableKeys asks) =>
        faults.Add(new ReadFault(table.File, null, problem, remedy) { Asks = asks, Candidates = candidates });
}
