using System.Reflection;
using SweepStats.Report.Sheets;

namespace SweepStats.Report.Pages;

/// <summary>
/// The whole page: two sheets that stand alone, and the annex; style and charts within, nothing fetched from anywhere.
/// </summary>
internal static class ReportPage
{
    private static readonly IPagePart[] Parts = [new SheetOne(), new SheetTwo(), new Annex()];

    /// <summary>The page in UTF-8, with the script that reads values off the pictures.</summary>
    public static byte[] Of(PageContent content) => Of($"Shielding report: {content.Result.Title}", html =>
    {
        html.Open("div", new Attr("class", content.Result.Rehearsed ? "report rehearsed" : "report"));
        foreach (IPagePart part in Parts)
        {
            part.Write(html, content);
        }

        html.Close();
        // The same text is a comment to XML and none to the script.
        html.Open("script").Drawing("//<![CDATA[\n").Drawing(Resource("report.js")).Drawing("//]]>\n").Close();
    });

    /// <summary>A page of its own: head and style, and what is written into its body.</summary>
    public static byte[] Of(string title, Action<HtmlWriter> body)
    {
        var html = new HtmlWriter();
        html.Drawing("<!DOCTYPE html>\n").Open("html", new Attr("lang", "en"));
        html.Open("head")
            .Drawing("<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Element("title", title);
        html.Open("style").Drawing(Resource("report.css")).Close().Close();
        html.Open("body").Open("main");
        body(html);
        return html.Close().Close().Close().ToArray();
    }

    private static string Resource(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("SweepStats.Report.Pages." + name)
            ?? throw new InvalidOperationException($"{name} is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
