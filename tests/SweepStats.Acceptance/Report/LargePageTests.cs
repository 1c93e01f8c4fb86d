using System.Text.Json;
using System.Xml.Linq;
using SweepStats.Rehearsal;
using SweepStats.Report;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The page of many specimens stays light, and its script small.</summary>
public sealed class LargePageTests
{
    private static readonly RehearsalPlan Hundred = new()
    {
        Title = "Hundred",
        Points = 1601,
        Lots = 10,
        SpecimensPerLot = 10,
        SpecimenDeviationDb = 0.5,
        FloorSweeps = 3,
        ReferenceSweeps = 3,
        CoveredSweeps = 2,
    };

    [Fact]
    public void AHundredSpecimensOf1601FrequenciesMakeLessThanThreeMegabytes()
    {
        Page page = new(Samples.Anew(Hundred, Samples.Asking(30)), new ReportOptions());
        Assert.InRange(page.Html.Length, 500_000, 3_000_000);
        XElement table = page.Tree.Descendants("table")
            .Single(t => t.Element("caption")!.Value.StartsWith("Figures over", StringComparison.Ordinal));
        XElement[] rows = [.. table.Element("tbody")!.Elements("tr")];
        Assert.Equal(100, rows.Length);
        Assert.Equal(40, rows.Count(r => r.Attribute("class") is null));
        XElement lots = page.Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == "sheet-lots");
        Assert.InRange(lots.ToString().Length, 1000, 90_000);
    }

    [Fact]
    public void TheScriptIsSmallAndFetchesNothing()
    {
        string script = new Page(Samples.Run(Samples.Small, Samples.Power)).Tree.Descendants("script")
            .Single(s => s.Attribute("type") is null).Value;
        Assert.InRange(script.Length, 1000, 12_000);
        string own = script.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
        string[] fetching = ["fetch(", "XMLHttpRequest", "import ", "http:", "https:", "eval(", "innerHTML"];
        Assert.All(fetching, word => Assert.DoesNotContain(word, own, StringComparison.Ordinal));
    }

    // A name that would end the script, or start another, is a name and nothing else.
    [Fact]
    public void NamesInTheValuesAreHarmless()
    {
        Page page = new(Samples.Renamed(name => name + "</script><script>alert(1)//\"&"));
        XElement[] values = [.. page.Tree.Descendants("script").Where(s => s.Attribute("type")?.Value == "application/json")];
        Assert.NotEmpty(values);
        Assert.All(values, v => Assert.Empty(v.Elements()));
        Assert.All(values, v => Assert.Contains("alert(1)", FirstName(v.Value), StringComparison.Ordinal));
        Assert.Single(page.Tree.Descendants("script"), s => s.Attribute("type") is null);
    }

    private static string FirstName(string values)
    {
        using JsonDocument read = JsonDocument.Parse(values);
        return read.RootElement.GetProperty("rows")[0].GetProperty("name").GetString()!;
    }
}
