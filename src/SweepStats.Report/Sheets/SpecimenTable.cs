using SweepStats.Bands;
using SweepStats.Report.Charts;
using SweepStats.Report.Pages;
using SweepStats.Shielding;

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
        int[] order = [.. Wording.WeakestFirst(result)];
        int rows = Math.Max(Fewest, Most - less);
        int[] shown = [.. order.Take(rows)];
        string caption = SheetWords.TableCaption(result);
        html.TableFrame(caption).Open("table").Element("caption", caption);
        html.TableHead(SheetWords.TableColumns(result)).Open("tbody");
        IReadOnlyList<string> names = ShortNames.Of([.. shown.Select(i => result.Bands[i].Name.ToString())], LongestName);
        Requirement? requirement = result.Plan.Requirement;
        double? asked = requirement is null ? null : RequirementLine.Constant(requirement, result.Campaign.Grid);
        var spark = Sparkline.Among(shown.Select(i => result.Curves[i]), asked is { } level ? [level] : []);
        for (int i = 0; i < shown.Length; i++)
        {
            Row(html, result, result.Bands[shown[i]], names[i]);
            Course(html, result.Curves[shown[i]], spark, asked);
        }

        html.Close().Close().Close();
        if (order.Length > rows)
        {
            html.Element("p", SheetWords.Others(result, [.. order.Skip(rows).Select(i => result.Bands[i])]), ("class", "small"));
        }
    }

    private static void Row(HtmlWriter html, AnalysisResult result, BandStatement band, string name)
    {
        html.Open("tr").Element("th", name, ("scope", "row"));
        html.Element("td", band.AtLeast is { } claim ? Wording.Bound(claim) : "no claim");
        if (result.Plan.Requirement is not null)
        {
            html.Element("td", Wording.Stands(result, band.Name) ?? Wording.Nothing);
        }

        html.Element("td", band is { AtLeast: not null, WeakestAt: { } at } ? Wording.Frequency(at) : Wording.Nothing);
        html.Element("td", Wording.FigureOf(band, band.MeanDb));
    }

    private static void Course(HtmlWriter html, ShieldingCurve curve, Sparkline spark, double? asked)
    {
        html.Open("td");
        spark.Write(html, curve, asked);
        html.Close().Close();
    }
}
