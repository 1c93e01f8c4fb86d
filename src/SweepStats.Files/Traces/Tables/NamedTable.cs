namespace SweepStats.Files.Traces.Tables;

/// <summary>A table whose columns have names and whose frequencies are found.</summary>
/// <param name="Sight">Its rows.</param>
/// <param name="Names">The names, one a column.</param>
/// <param name="Frequency">Place of the frequency column from 0; −1 where no column holds it.</param>
internal sealed record NamedTable(TableSight Sight, ImmutableArray<ColumnName> Names, int Frequency)
{
    /// <summary>Some columns in the words of a message.</summary>
    public string List(IEnumerable<int> columns) => ColumnList.Of(Names, columns);

    /// <summary>All columns in the words of a message.</summary>
    public string ListAll => List(Enumerable.Range(0, Names.Length));
}
