using CsvHelper;
using SpreadCheetah;

namespace SweepStats.Files.Spreadsheets;

/// <summary>A table of a report as a sheet: numbers are numbers, and a bound stands in a column of its own.</summary>
/// <remarks>Taken from the written table, so that both show the same digits.</remarks>
public sealed class WorkbookTable
{
    private readonly ImmutableArray<string[]> _rows;
    private readonly ImmutableArray<SheetColumn> _columns;

    /// <param name="name">Name of the sheet.</param>
    /// <param name="write">Writes the table as comma-separated text, header first.</param>
    public WorkbookTable(string name, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        Name = name;
        ImmutableArray<string[]> all = Read(write);
        _columns = SheetColumn.Of(all[0]);
        _rows = all[1..];
    }

    /// <summary>Name of the sheet.</summary>
    public string Name { get; }

    /// <summary>
    /// Names of its columns, those of the written table and <c>x_at_least_db</c> behind each value with limits.
    /// </summary>
    public IEnumerable<string> Columns => _columns.Select(column => column.Name);

    /// <summary>Its rows.</summary>
    internal IEnumerable<DataCell[]> Rows => _rows.Select(cells => _columns.Select(column => column.Cell(cells)).ToArray());

    private static ImmutableArray<string[]> Read(Action<Stream> write)
    {
        using var text = new MemoryStream();
        write(text);
        using CsvReader reader = CsvReader.Create(text.ToArray(), new CsvReaderOptions { Separator = ',', HasHeader = false });
        List<string[]> rows = [];
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return [.. rows];
    }
}
