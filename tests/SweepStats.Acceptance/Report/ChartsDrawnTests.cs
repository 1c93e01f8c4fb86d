using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Report;
using SweepStats.Report.Specimens;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed partial class ChartsDrawnTests
{
    // 32 specimens of four lots.
    private static readonly Lazy<Page> Usual = new(() => new Page(Many));
    private static readonly Lazy<Page> Every = new(() => new Page(Many, new ReportOptions { Charts = ChartsDrawn.All }));

    private static AnalysisResult Many => Samples.Run(Samples.HundredGroups, Samples.Power);

    [Fact]
    public void ManySpecimensHaveChartsOfTheFiveWeakestAndOfAllThatIsAboutMoreThanOne()
    {
        string[] kept = [.. Usual.Value.Charts.Select(c => c.Path)];
        string[] every = [.. Every.Value.Charts.Select(c => c.Path)];
        Assert.Equal(64, every.Count(OfOneSpecimen().IsMatch));
        // Nothing is asked, so the weakest are those with the lowest limit of a value anywhere: what is hidden says nothing of
        // the cloth.
        string[] weakest =
            [.. Many.Curves.OrderBy(Lowest).Take(5).Select(c => $"{c.Name.Lot}-{c.Name.Specimen}".ToLowerInvariant())];
        Assert.Equal(
            weakest.SelectMany(w => new[] { $"charts/shielding-{w}.svg", $"charts/levels-{w}.svg" })
                .Order(StringComparer.Ordinal),
            kept.Where(k => OfOneSpecimen().IsMatch(k)).Order(StringComparer.Ordinal));
        Assert.Equal(every.Where(e => !OfOneSpecimen().IsMatch(e)), kept.Where(k => !OfOneSpecimen().IsMatch(k)));
    }

    [Fact]
    public void AChartIsTheSameWhicheverOthersAreDrawn() =>
        Assert.All(Usual.Value.Charts,
            chart => Assert.Equal(Every.Value.Files.Single(f => f.Path == chart.Path).Content, chart.Content));

    [Fact]
    public void APageSaysWhatIsLeftOutAndHowToHaveIt()
    {
        IEnumerable<SpecimenName> weakest = Many.Curves.OrderBy(Lowest).Take(5).Select(c => c.Name);
        Assert.Contains(
            $"Of single specimens the weakest are drawn: {string.Join(", ", weakest)}. Left out: the charts of 27 others. Run "
                + "the same command again with --charts all: it draws them into this folder.",
            Usual.Value.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("--charts all", Every.Value.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ChartsDrawn.None)]
    [InlineData(ChartsDrawn.Summary)]
    [InlineData(ChartsDrawn.All)]
    public void NoLinkLeadsNowhereAndNoSectionIsEmpty(ChartsDrawn drawn)
    {
        AnalysisResult[] results = [Many, Samples.ThreeLots, Samples.Run(Samples.Lots, Samples.Choosing),
            Samples.Run(Samples.Washed, Samples.AlongCycles(40))];
        foreach (AnalysisResult result in results)
        {
            Page page = new(result, new ReportOptions { Charts = drawn });
            string[] places =
                [.. page.Files.Select(f => f.Path), .. page.Tree.Descendants().Select(e => "#" + e.Attribute("id")?.Value)];
            Assert.All(page.Tree.Descendants("a"), a => Assert.Contains(a.Attribute("href")!.Value, places));
            Assert.All(page.Tree.Descendants("figure"),
                figure => Assert.Contains(figure.Elements(), e => e.Name.LocalName == "svg"));
            XElement[] headings = [.. page.Tree.Descendants().Where(e => e.Name.LocalName is "h2" or "h3")];
            Assert.All(headings,
                h => Assert.False((h.Parent!.Name.LocalName == "summary" ? h.Parent : h).ElementsAfterSelf()
                    .FirstOrDefault() is not { } next || (next.Name.LocalName == "h3" && h.Name.LocalName == "h3"), h.Value));
        }
    }

    [Fact]
    public void WithoutChartsThereIsThePageAlone()
    {
        Page page = new(Samples.ThreeLots, new ReportOptions { Charts = ChartsDrawn.None });
        Assert.Equal(["index.html"], page.Files.Select(f => f.Path));
        Assert.Empty(page.Tree.Descendants("figure"));
        Assert.Contains("No charts were drawn, as asked for. Run the same command again with --charts summary or --charts all: "
            + "it draws them into this folder.", page.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("There is no chart of the dynamic range", page.Words, StringComparison.Ordinal);
        // All but the charts and what is said of them is what it would be.
        XElement[] tables = [.. new Page(Samples.ThreeLots).Tree.Descendants("table")];
        Assert.Equal(tables.Select(t => t.Value), page.Tree.Descendants("table").Select(t => t.Value));
    }

    [Fact]
    public void FewSpecimensAreDrawnInFullUnlessASummaryIsAskedFor()
    {
        Page few = new(Samples.ThreeLots);
        Assert.Equal(12, few.Charts.Count(c => OfOneSpecimen().IsMatch(c.Path)));
        Assert.Equal(few.Files.Select(f => f.Content),
            new Page(Samples.ThreeLots, new ReportOptions { Charts = ChartsDrawn.All }).Files.Select(f => f.Content));
        Page summary = new(Samples.ThreeLots, new ReportOptions { Charts = ChartsDrawn.Summary });
        Assert.Equal(10, summary.Charts.Count(c => OfOneSpecimen().IsMatch(c.Path)));
        Assert.Contains("Left out: the charts of 1 other.", summary.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void SpecimensThatFailComeBeforeOnesWithLessRoom()
    {
        AnalysisResult result = Samples.ThreeLots;
        SpecimenName[] failing =
            [.. result.Verdict.Specimens.Where(s => s.Outcome == Verdicts.RequirementOutcome.Fails).Select(s => s.Name)];
        IReadOnlyList<SpecimenName> weakest = WeakestSpecimens.Of(result);
        Assert.Equal(5, weakest.Count);
        Assert.Equal(failing.Order(Comparer<SpecimenName>.Create((a, b) => string.CompareOrdinal(a.ToString(), b.ToString()))),
            weakest.Take(failing.Length)
                .Order(Comparer<SpecimenName>.Create((a, b) => string.CompareOrdinal(a.ToString(), b.ToString()))));
    }

    [GeneratedRegex("^charts/(shielding|levels)-[a-d]-[a-d][0-9]+\\.svg$")]
    private static partial Regex OfOneSpecimen();

    private static double Lowest(ShieldingCurve curve) => curve.Readings.Min(r => r switch
    {
        ShieldingReading.Measured m => m.Evidence.OneSidedLow!.Value.Value,
        _ => double.PositiveInfinity,
    });
}
