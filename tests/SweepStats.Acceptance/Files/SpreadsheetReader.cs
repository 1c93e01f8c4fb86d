using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;

namespace SweepStats.Acceptance.Files;

/// <summary>A workbook as a library reads it that had no part in writing it (DocumentFormat.OpenXml).</summary>
internal sealed class SpreadsheetReader : IDisposable
{
    private readonly SpreadsheetDocument _document;

    public SpreadsheetReader(byte[] content) =>
        _document = SpreadsheetDocument.Open(new MemoryStream(content), isEditable: false);

    /// <summary>Where it differs from the standard (ECMA-376).</summary>
    public IReadOnlyList<string> Faults => [.. new OpenXmlValidator().Validate(_document).Select(e => e.Description)];

    public IReadOnlyList<string> Sheets => [.. Book.Workbook!.Descendants<Sheet>().Select(s => s.Name!.Value!)];

    /// <summary>The rows of a sheet, a text a cell; numbers as they are kept.</summary>
    public IReadOnlyList<string[]> Rows(string sheet) =>
        [.. Part(sheet).Worksheet!.Descendants<Row>().Select(r => r.Elements<Cell>().Select(Text).ToArray())];

    /// <summary>Whether a cell is kept as a number.</summary>
    public bool IsNumber(string sheet, int row, int column) =>
        Part(sheet).Worksheet!.Descendants<Row>().ElementAt(row).Elements<Cell>()
            .ElementAt(column).DataType?.Value is not { } type || type == CellValues.Number;

    public void Dispose() => _document.Dispose();

    private WorkbookPart Book => _document.WorkbookPart!;

    private WorksheetPart Part(string sheet) =>
        (WorksheetPart)Book.GetPartById(Book.Workbook!.Descendants<Sheet>().Single(s => s.Name == sheet).Id!);

    private static string Text(Cell cell) =>
        cell.DataType?.Value == CellValues.InlineString ? cell.InlineString!.InnerText : cell.CellValue?.Text ?? "";
}
