using SweepStats.Report.Pages;

namespace SweepStats.Report.Sheets;

/// <summary>The first line of a sheet: what it is, and, where nothing was measured, that mark.</summary>
internal static class SheetHead
{
    /// <summary>Writes it, with the number of the sheet.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result, int sheet)
    {
        html.Open("p", new Attr("class", "kind")).Element("span", PageWords.Kind);
        if (result.Rehearsed)
        {
            html.Element("span", SheetWords.Mark, new Attr("class", "rehearsal"));
        }

        html.Element("span", SheetWords.SheetNumber(sheet)).Close();
    }
}
