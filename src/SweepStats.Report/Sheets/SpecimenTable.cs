using SweepStats.Bands;
using SweepStats.Report.Answer;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>One row a specimen, the weakest first: what it shields everywhere, where least, on average, and its course.</summary>
internal static class SpecimenTable
{
    /// <summary>More rows than this do not fit the sheet.</summary>
    public const int Most = 12;

    private const int Fewest = 4;
    private const int LongestName = 34;

    /// <summary>Writes the table.</summary>
    /// <param name="html">Where it goes.</param>
    /// <param name="result">What was found.</param>
    /// <param name="less">Rows that other lines of the sheet take the room of.</param>
    public static void Write(HtmlWriter html, AnalysisResult result, int less)
    {
        int[] order = [.. FirstScreenWords.WeakestFirst(result)];
        int rows = Math.Max(Fewest, Most - less);
        int[] shown = [.. order.Take(rows)];
        Table(html, result, shown);
        if (order.Length > rows)
        {
            html.Element(
                "p", SheetWords.Others(result, [.. order.Skip(rows).Select(i => result.Bands[i])]), new Attr("class", "small"));
        }
    }

    private static void Table(HtmlWriter html, AnalysisResult result, int[] shown)
    {
        string caption = SheetWords.TableCaption(result);
        string[] columns = SheetWords.TableColumns(result);
        html.TableFrame(caption).Open("table", new Attr("class", "cards"), new Attr("role", "table")).Element("caption", caption);
        html.TableHead(columns).Open("tbody", new Attr("role", "rowgroup"));
        Rows(html, result, shown, columns);
        html.Close().Close().Close();
    }

    private static void Rows(HtmlWriter html, AnalysisResult result, int[] shown, string[] columns)
    {
        IReadOnlyList<string> names = ShortNames.Of([.. shown.Select(i => result.Bands[i].Name.ToString())], LongestName);
        Requirement? requirement = result.Plan.Requirement;
        double? asked = requirement is null ? null : RequirementLine.Constant(requirement, result.Campaign.Grid);
        var spark = Sparkline.Among(shown.Select(i => result.Curves[i]), asked is { } level ? [level] : []);
        for (int i = 0; i < shown.Length; i++)
        {
            Row(html, names[i], Cells(result, result.Bands[shown[i]]), columns);
            html.Open("td", new Attr("role", "cell"), new Attr("data-label", columns[^1]));
            spark.Write(html, result.Curves[shown[i]], asked);
            html.Close().Close();
        }
    }

    private static string[] Cells(AnalysisResult result, BandStatement band) =>
    [
        band.AtLeast is { } claim ? PrintedLevel.Bound(claim) : "no claim",
        .. result.Plan.Requirement is null ? Array.Empty<string>()
            : [RequirementWords.Stands(result, band.Name) ?? Printed.Nothing],
        band is { AtLeast: not null, WeakestAt: { } at } ? PrintedFrequency.Frequency(at) : Printed.Nothing,
        SpecimenWords.FigureOf(band, band.MeanDb),
    ];

    // Where a row has no room it is laid out as a card: each cell then says what it is, and stays a cell to a screen reader.
    private static void Row(HtmlWriter html, string name, string[] cells, string[] columns)
    {
        html.Open("tr", new Attr("role", "row")).Element("th", name, new Attr("scope", "row"), new Attr("role", "rowheader"));
        foreach ((string cell, string column) in cells.Zip(columns.Skip(1)))
        {
            html.Element("td", cell, new Attr("role", "cell"), new Attr("data-label", column));
        }
    }
}
