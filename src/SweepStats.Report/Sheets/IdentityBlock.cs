using SweepStats.Report.Pages;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>Who tested what with which instrument; a rule to fill in by hand where nobody stated it.</summary>
internal static class IdentityBlock
{
    // So many letters find room in one line of a cell.
    private const int LineOfCell = 44;

    /// <summary>Writes it as a list of terms, six lines whatever is stated.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        html.Open("dl", new Attr("class", "identity"));
        foreach (IdentityLine line in Lines(result))
        {
            html.Open("div").Element("dt", line.Name);
            html.Element("dd", line.Text ?? SheetWords.Blank, new Attr("class", line.Text is null ? "blank" : "stated")).Close();
        }

        html.Close();
    }

    /// <summary>Lines of text that it takes beyond the usual.</summary>
    public static int LinesMore(AnalysisResult result) =>
        Lines(result).Chunk(2).Sum(row => row.Max(l => (l.Text?.Length ?? 0) / LineOfCell));

    private static IdentityLine[] Lines(AnalysisResult result)
    {
        TestIdentity stated = result.Identity;
        return
        [
            new("Laboratory", stated.Laboratory),
            new("Customer", stated.Customer),
            new("Instrument", stated.Instrument),
            new("Calibration", stated.Calibration),
            new("Operator", stated.Operator),
            new("Measured on", SheetWords.Measured(result)),
        ];
    }
}
