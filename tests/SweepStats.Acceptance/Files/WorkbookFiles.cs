using System.Text;
using SweepStats.Acceptance.Commands;
using SweepStats.Files.Spreadsheets;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>results.xlsx, read by another library than the one that wrote it.</summary>
public sealed class WorkbookFiles
{
    private const string Limited = "lot,se_db,se_low_db,se_high_db,state\n";

    [Fact]
    public void EveryTableOfARunIsASheetWithTheSameFigures()
    {
        using var folder = new ScratchFolder();
        string report = Path.Combine(folder.Path, "report");
        Assert.Equal(0, Shell.Run("run", Shell.Demo, "--out", report, "--charts", "none", "--xlsx", "--quiet").Code);
        using var book = new SpreadsheetReader(File.ReadAllBytes(Path.Combine(report, "results.xlsx")));
        string[] tables = [.. Directory.GetFiles(report, "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Order(StringComparer.Ordinal)];
        Assert.Empty(book.Faults);
        Assert.Equal("about", book.Sheets[0]);
        Assert.Equal(tables, book.Sheets.Skip(1).Order(StringComparer.Ordinal));
        string[] written = File.ReadAllLines(Path.Combine(report, "shielding.csv"));
        IReadOnlyList<string[]> sheet = book.Rows("shielding");
        Assert.Equal(written.Length, sheet.Count);
        for (int row = 1; row < written.Length; row++)
        {
            string[] cells = written[row].Split(',');
            string[] shown = sheet[row];
            Assert.Equal(cells[1], shown[1]);
            bool bound = cells[9].Length == 0;
            Assert.Equal([.. Numbers(cells[2..10]), .. bound ? ["", ""] : Numbers(cells[10..12]),
                .. bound ? Numbers(cells[10..11]) : [""]], Numbers(shown[2..13]));
        }
    }

    [Fact]
    public void TheSameRunGivesTheSameBytesAndTheWorkbookIsListed()
    {
        using var folder = new ScratchFolder();
        string[] reports = [Path.Combine(folder.Path, "one"), Path.Combine(folder.Path, "two")];
        foreach (string report in reports)
        {
            Assert.Equal(0, Shell.Run("run", Shell.Demo, "--out", report, "--charts", "none", "--xlsx", "--quiet").Code);
        }

        Assert.Equal(File.ReadAllBytes(Path.Combine(reports[0], "results.xlsx")),
            File.ReadAllBytes(Path.Combine(reports[1], "results.xlsx")));
        Assert.Contains("\"results.xlsx\"", File.ReadAllText(Path.Combine(reports[0], "summary.json")), StringComparison.Ordinal);
        // Its own report may be replaced, workbook and all.
        Assert.Equal(0, Shell.Run("run", Shell.Demo, "--out", reports[0], "--charts", "none", "--quiet").Code);
        Assert.False(File.Exists(Path.Combine(reports[0], "results.xlsx")));
    }

    [Fact]
    public void ABoundStandsInItsOwnColumnAndNowhereElse()
    {
        using SpreadsheetReader book = Written(Limited + "A,42.5,41,44,clear\nA,,60.25,,capped\nA,,,,overloaded\n");
        Assert.Equal(["lot", "se_db", "se_low_db", "se_high_db", "se_at_least_db", "state"], book.Rows("t")[0]);
        Assert.Equal(["A", "42.5", "41", "44", "", "clear"], book.Rows("t")[1]);
        Assert.Equal(["A", "", "", "", "60.25", "capped"], book.Rows("t")[2]);
        Assert.Equal(["A", "", "", "", "", "overloaded"], book.Rows("t")[3]);
    }

    [Fact]
    public void ANameThatLooksLikeANumberStaysAName()
    {
        using SpreadsheetReader book = Written("lot,specimen,se_db\n007,1e3,42\n'=1+1,<b>,43\n");
        Assert.Equal(["007", "1e3", "42"], book.Rows("t")[1]);
        Assert.Equal(["'=1+1", "<b>", "43"], book.Rows("t")[2]);
        Assert.False(book.IsNumber("t", 1, 0));
        Assert.True(book.IsNumber("t", 1, 2));
        Assert.Empty(book.Faults);
    }

    [Fact]
    public void ATableWithoutRowsIsASheetWithItsHeader()
    {
        using SpreadsheetReader book = Written(Limited);
        Assert.Single(book.Rows("t"));
        Assert.Empty(book.Faults);
    }

    private static SpreadsheetReader Written(string table)
    {
        using var to = new MemoryStream();
        Workbook.Write([new WorkbookFact("Report", "a & b")],
            [new WorkbookTable("t", stream => stream.Write(Encoding.UTF8.GetBytes(table)))], to);
        return new SpreadsheetReader(to.ToArray());
    }

    // 42.5000 in the table is 42.5 in the sheet.
    private static string[] Numbers(string[] cells) =>
        [.. cells.Select(c => double.TryParse(c, System.Globalization.CultureInfo.InvariantCulture, out double n)
            ? n.ToString("R", System.Globalization.CultureInfo.InvariantCulture) : c)];
}
