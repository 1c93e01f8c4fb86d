using System.IO.Compression;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace SweepStats.Files.Spreadsheets;

/// <summary>results.xlsx: what the report is of, then each of its tables on a sheet of its own (ECMA-376).</summary>
public static class Workbook
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "results.xlsx";

    // ECMA-376 itself names no limit; spreadsheets hold 2^20 rows, and the first is the header.
    private const int MostRows = (1 << 20) - 1;

    // A zip file tells of each part when it was written; the earliest it can, so that the same figures give the same bytes.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes the workbook.</summary>
    /// <param name="facts">What the tables are of, top to bottom.</param>
    /// <param name="tables">The tables, a sheet each; one with more rows than a sheet holds goes on on the next.</param>
    /// <param name="to">Where to; stays open.</param>
    public static void Write(ImmutableArray<WorkbookFact> facts, IEnumerable<WorkbookTable> tables, Stream to)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(to);
        using var written = new MemoryStream();
        // In memory nothing is waited for.
        Write(facts, tables, written, CancellationToken.None).GetAwaiter().GetResult();
        written.Position = 0;
        WithoutTimes(written, to);
    }

    private static async Task Write(
        ImmutableArray<WorkbookFact> facts, IEnumerable<WorkbookTable> tables, Stream to, CancellationToken stop)
    {
        await using Spreadsheet book =
            await Spreadsheet.CreateNewAsync(to, new SpreadCheetahOptions { DocumentProperties = null }, stop);
        StyleId header = book.AddStyle(new Style { Font = { Bold = true } });
        await AddFacts(book, facts, header, stop);
        foreach (WorkbookTable table in tables)
        {
            await AddTable(book, table, header, stop);
        }

        await book.FinishAsync(stop);
    }

    private static async Task AddFacts(Spreadsheet book, ImmutableArray<WorkbookFact> facts, StyleId header,
        CancellationToken stop)
    {
        var options = new WorksheetOptions();
        options.Column(1).Width = 26;
        options.Column(2).Width = 90;
        await book.StartWorksheetAsync("about", options, stop);
        foreach (WorkbookFact fact in facts)
        {
            await book.AddRowAsync(new[] { new StyledCell(fact.Name, header), new StyledCell(fact.Value, null) }, stop);
        }
    }

    private static async Task AddTable(Spreadsheet book, WorkbookTable table, StyleId header, CancellationToken stop)
    {
        string[] columns = [.. table.Columns];
        int sheets = 0;
        foreach (DataCell[][] rows in table.Rows.Chunk(MostRows).DefaultIfEmpty([]))
        {
            sheets++;
            var options = new WorksheetOptions
            {
                FrozenRows = 1,
                DefaultColumnWidth = 14,
                AutoFilter = new AutoFilterOptions($"A1:{SpreadsheetUtility.GetColumnName(columns.Length)}{rows.Length + 1}"),
            };
            await book.StartWorksheetAsync(sheets == 1 ? table.Name : $"{table.Name} {sheets}", options, stop);
            await book.AddHeaderRowAsync(columns, header, stop);
            foreach (DataCell[] row in rows)
            {
                await book.AddRowAsync(row, stop);
            }
        }
    }

    private static void WithoutTimes(Stream written, Stream to)
    {
        using var from = new ZipArchive(written, ZipArchiveMode.Read);
        using var into = new MemoryStream();
        using (var timeless = new ZipArchive(into, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry part in from.Entries)
            {
                ZipArchiveEntry copy = timeless.CreateEntry(part.FullName, CompressionLevel.Fastest);
                copy.LastWriteTime = NoTime;
                using Stream source = part.Open();
                using Stream target = copy.Open();
                source.CopyTo(target);
            }
        }

        into.WriteTo(to);
    }
}
