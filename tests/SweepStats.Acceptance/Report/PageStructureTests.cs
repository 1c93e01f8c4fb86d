using System.Globalization;
using System.Text;
using System.Xml.Linq;
using SweepStats.Report;
using SweepStats.Report.Drawing;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class PageStructureTests
{
    private static readonly Page Autumn = new(Samples.ThreeLots);

    [Fact]
    public void TheReportIsThePageAndTheChartsItNames()
    {
        Assert.Equal("index.html", Autumn.Files[0].Path);
        Assert.Equal(Autumn.Files.Count, Autumn.Files.Select(f => f.Path.ToLowerInvariant()).Distinct().Count());
        IEnumerable<string> linked =
            Autumn.Tree.Descendants("a").Select(a => a.Attribute("href")!.Value).Where(h => !h.StartsWith('#'));
        Assert.Equal(Autumn.Charts.Select(f => f.Path).Order(StringComparer.Ordinal),
            linked.Distinct().Order(StringComparer.Ordinal));
        // Shielding, range, bands and uncertainty budgets; offsets; two a specimen.
        Assert.Equal(4 + 6 + 1 + 1 + (2 * 6), Autumn.Charts.Count());
    }

    [Fact]
    public void EveryChartIsValidXmlThatScalesAndNamesItself()
    {
        foreach (ReportFile file in Autumn.Charts)
        {
            Assert.Equal((byte)'<', file.Content[0]);
            XElement svg = XDocument.Load(new MemoryStream(file.Content)).Root!;
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.StartsWith("0 0 900 ", svg.Attribute("viewBox")!.Value, StringComparison.Ordinal);
            string[] named = svg.Attribute("aria-labelledby")!.Value.Split(' ');
            Assert.Equal(["title", "desc"],
                named.Select(id => svg.Elements().Single(e => e.Attribute("id")?.Value == id).Name.LocalName));
        }
    }

    [Fact]
    public void IdsAreUniqueAndEveryReferenceFindsItsOwn()
    {
        string[] ids = [.. Autumn.Tree.Descendants().Select(e => e.Attribute("id")?.Value).OfType<string>()];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string[] used =
        [
            .. Autumn.Tree.Descendants().Select(e => e.Attribute("clip-path")?.Value).OfType<string>().Select(v => v[5..^1]),
            .. Autumn.Tree.Descendants("a").Select(a => a.Attribute("href")!.Value).Where(h => h.StartsWith('#'))
                .Select(h => h[1..]),
            .. Autumn.Tree.Descendants().Select(e => e.Attribute("aria-labelledby")?.Value).OfType<string>()
                .SelectMany(v => v.Split(' ')),
        ];
        Assert.NotEmpty(used);
        Assert.All(used, id => Assert.Contains(id, ids));
    }

    [Fact]
    public void NothingIsFetchedAndNothingRunsButTheScriptOfThePage()
    {
        string[] fetching = ["src", "href", "xlink:href", "action", "poster", "data"];
        foreach (XAttribute attribute in Autumn.Tree.Descendants().Attributes().Where(a => !a.IsNamespaceDeclaration))
        {
            Assert.False(attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal), attribute.ToString());
            Assert.True(!fetching.Contains(attribute.Name.LocalName)
                || attribute.Value.StartsWith("charts/", StringComparison.Ordinal) || attribute.Value.StartsWith('#'),
                attribute.ToString());
        }

        string[] elements = [.. Autumn.Tree.Descendants().Select(e => e.Name.LocalName).Distinct()];
        Assert.DoesNotContain(elements, e => e is "link" or "img" or "iframe" or "object" or "image");
        Assert.Equal(["application/json", null],
            Autumn.Tree.Descendants("script").Select(s => s.Attribute("type")?.Value).Distinct());
        Assert.Single(Autumn.Tree.Descendants("script"), s => s.Attribute("type") is null);
        string style = Autumn.Tree.Descendants("style").Single().Value;
        Assert.DoesNotContain("url(", style, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", style, StringComparison.Ordinal);
    }

    [Fact]
    public void TablesHaveCaptionsAndHeadersForBothDirections()
    {
        XElement[] tables = [.. Autumn.Tree.Descendants("table")];
        Assert.NotEmpty(tables);
        foreach (XElement table in tables)
        {
            Assert.NotEmpty(table.Element("caption")!.Value);
            XElement[] columns = [.. table.Element("thead")!.Descendants("th")];
            Assert.All(columns, th => Assert.Equal("col", th.Attribute("scope")!.Value));
            foreach (XElement row in table.Element("tbody")!.Elements("tr"))
            {
                Assert.Equal("row", row.Elements().First().Attribute("scope")!.Value);
                Assert.Equal(columns.Length, row.Elements().Count());
            }
        }
    }

    [Fact]
    public void HeadingsStepDownOneAtATimeAndThereIsOneTitle()
    {
        int[] levels = [.. Autumn.Tree.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "h3")
            .Select(e => e.Name.LocalName[1] - '0')];
        Assert.Equal(1, levels[0]);
        Assert.Equal(1, levels.Count(l => l == 1));
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second - pair.First <= 1));
    }

    [Theory]
    [InlineData("de-DE", false)]
    [InlineData("tr-TR", false)]
    [InlineData("fa-IR", true)]
    public void TheBytesDoNotDependOnTheCultureNorOnTheRun(string culture, bool analysed)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            // A copy is another result: its page is built again in any case.
            Page again = new(analysed ? Samples.Anew(Samples.AutumnPlan, Samples.Asking(40)) : Samples.ThreeLots with { });
            Assert.NotSame(Autumn.Files, again.Files);
            Assert.Equal(Autumn.Files.Select(f => f.Path), again.Files.Select(f => f.Path));
            Assert.All(Autumn.Files.Zip(again.Files), pair => Assert.Equal(pair.First.Content, pair.Second.Content));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void WhatWasAssumedAndLeftOutIsPrinted()
    {
        var options = new ReportOptions { Assumptions = ["Levels are read as dBm."], LeftOut = ["covered/A/A01/x.csv: <empty>"] };
        Page page = new(Samples.Run(Samples.Small, Samples.Power), options);
        Assert.Contains("Levels are read as dBm.", page.Words, StringComparison.Ordinal);
        Assert.Contains("x.csv: <empty>", page.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("<empty>", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void PngChartsComeBesideTheirSvgOrTheReportSaysWhatToInstall()
    {
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power);
        ReportFile[] files;
        try
        {
            files = [.. ReportBuilder.Build(result, new ReportOptions { Png = true })];
        }
        catch (PngUnavailableException e)
        {
            // A machine without fonts.
            Assert.Contains("Install a font", e.Message, StringComparison.Ordinal);
            return;
        }

        ReportFile[] pngs = [.. files.Where(f => f.Path.EndsWith(".png", StringComparison.Ordinal))];
        string[] svgs = [.. files.Select(f => f.Path).Where(p => p.EndsWith(".svg", StringComparison.Ordinal))];
        Assert.Equal(svgs, pngs.Select(f => f.Path.Replace(".png", ".svg", StringComparison.Ordinal)));
        Assert.All(pngs, f => Assert.Equal("PNG", Encoding.ASCII.GetString(f.Content, 1, 3)));
    }
}
