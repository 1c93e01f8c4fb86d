using System.Globalization;
using System.Xml.Linq;
using SweepStats.Quantities;
using SweepStats.Report.Budgets;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The section on uncertainty budgets, its chart, and what it says of the linear budget.</summary>
public sealed class BudgetPageTests
{
    private static readonly UncertaintyEntry Scale =
        new() { Name = "scale <b>", HalfWidthDb = 0.3, Distribution = ErrorDistribution.Rectangular, ActsOn = ErrorActsOn.Both };
    private static readonly UncertaintyEntry Cable = new()
    {
        Name = "cable",
        HalfWidthDb = 1,
        Distribution = ErrorDistribution.Arcsine,
        ActsOn = ErrorActsOn.Both,
        Common = true,
    };

    [Fact]
    public void EverySourceHasItsRowWithEscapedNames()
    {
        XElement table = Tables(new Page(Samples.Run(Samples.Small, Samples.Power with { Uncertainties = [Scale, Cable] })))[0];
        string[] sources = [.. table.Element("tbody")!.Elements("tr").Select(r => r.Element("th")!.Value)];
        Assert.Equal(["Reference repeats", "Covered sweeps", "Floor", "scale <b> (reference)", "scale <b> (covered)", "cable",
            "Combined", "Expanded, 95 %", "To quote, 95 %"], sources);
        string[] cable = Cells(table, 5);
        Assert.Equal(("B", "0, cancels", "0.000 dB"), (cable[0], cable[3], cable[4]));
        Assert.Equal("rectangular, ±0.3 dB", Cells(table, 3)[1]);
    }

    [Fact]
    public void TheCombinedRowIsTheRootOfTheSquares()
    {
        XElement table = Tables(new Page(Samples.Run(Samples.Small, Samples.Power with { Uncertainties = [Scale] })))[0];
        int rows = table.Element("tbody")!.Elements("tr").Count();
        double Contribution(int row) => double.Parse(Cells(table, row)[4].Split(' ')[0], CultureInfo.InvariantCulture);
        double squares = Enumerable.Range(0, rows - 3).Sum(r => Contribution(r) * Contribution(r));
        Assert.Equal(Math.Sqrt(squares), Contribution(rows - 3), 0.002);
    }

    [Theory]
    [InlineData(0.05, "more covered sweeps help|more reference sweeps help")]
    [InlineData(3, "above all scale <b> (reference): make that smaller; more sweeps hardly help.|above all scale <b> (covered): "
        + "make that smaller; more sweeps hardly help.")]
    public void WhatRulesIsSaidWithWhatHelps(double halfWidth, string expected)
    {
        Page page = new(
            Samples.Run(Samples.Small, Samples.Power with { Uncertainties = [Scale with { HalfWidthDb = halfWidth }] }));
        Assert.Contains(expected.Split('|'), words => page.Words.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void WithPlacementsMorePlacementsHelp() =>
    Assert.Contains("more placements help, more sweeps of the same placement do not", new Page(Samples.ThreeLots).Words,
        StringComparison.Ordinal);

    [Fact]
    public void NearTheFloorTheLinearBudgetIsSaidNotToHold()
    {
        Page page = new(Samples.Run(Samples.Small with { ShieldingStopDb = 85 },
            Samples.Power with { BudgetFrequencies = [new Hertz(1e9)] }));
        Assert.Contains("open above", page.Words, StringComparison.Ordinal);
        Assert.Contains("of the trials the covered level does not rise over the floor, so the upper end is open.", page.Words,
            StringComparison.Ordinal);
    }

    [Fact]
    public void FarAboveTheFloorWithManySweepsItIsSaidToHold()
    {
        Page page = new(Samples.Run(Samples.Small with { ReferenceSweeps = 40, CoveredSweeps = 40 }, Samples.Power));
        Assert.Contains("The linear budget holds", page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void SingleSweepsAreToldWhyTheyHaveNone() =>
        Assert.Contains("There is no uncertainty budget",
            new Page(Samples.Run(Samples.Small with { CoveredSweeps = 1 }, Samples.Power)).Words, StringComparison.Ordinal);

    [Fact]
    public void OfManySpecimensTheWeakestAreShownAndTheOthersCounted()
    {
        AnalysisResult result = Samples.Run(
            Samples.Small with { Lots = 2, SpecimensPerLot = 10, Points = 5, SpecimenDeviationDb = 3 }, Samples.Power);
        Page page = new(result);
        Assert.Contains("the 2 weakest specimens of 20", page.Words, StringComparison.Ordinal);
        string[] weakest = [.. result.Budgets.OrderBy(b => b.All.Min(x => x.Reported.Low)).Take(2).Select(b => b.Name.ToString())
            .Order(StringComparer.Ordinal)];
        Assert.Equal(weakest, Section(page).Descendants("h3").Select(h => h.Value).Order(StringComparer.Ordinal));
        Assert.Contains(page.Labels("uncertainty-budget"), l => l.Contains("10 of 40 budgets", StringComparison.Ordinal));
        Assert.Equal(10, page.Labels("uncertainty-budget").Count(l => l == BudgetAdviceWords.Combined));
    }

    [Fact]
    public void TheChartNamesEverySourceOnceABudget()
    {
        Page page = new(Samples.Run(Samples.Small,
            Samples.Power with { Uncertainties = [Scale with { Name = "a scale of a very long name that is cut" }] }));
        IReadOnlyList<string> labels = page.Labels("uncertainty-budget");
        Assert.Equal(2, labels.Count(l => l.EndsWith("… (reference)", StringComparison.Ordinal)));
        Assert.Equal(2, labels.Count(l => l.EndsWith("… (covered)", StringComparison.Ordinal)));
        Assert.Contains(labels, l => l.EndsWith(", mean over the band", StringComparison.Ordinal));
    }

    [Fact]
    public void ManySourcesAreGatheredIntoSmallerOnes()
    {
        UncertaintyEntry[] many = [.. Enumerable.Range(1, 8)
            .Select(i => Scale with { Name = $"error {i}", ActsOn = ErrorActsOn.Covered, HalfWidthDb = i * 0.1 })];
        Page page = new(Samples.Run(Samples.Small, Samples.Power with { Uncertainties = [.. many] }));
        Assert.Contains(BudgetAdviceWords.SmallerSources, page.Labels("uncertainty-budget"));
        Assert.DoesNotContain("error 1", page.Labels("uncertainty-budget"));
        Assert.Contains("error 1", Section(page).Value, StringComparison.Ordinal);
    }

    private static XElement Section(Page page) =>
        page.Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == "uncertainty-budget");

    private static XElement[] Tables(Page page) => [.. Section(page).Descendants("table")];

    private static string[] Cells(XElement table, int row) =>
        [.. table.Element("tbody")!.Elements("tr").ElementAt(row).Elements("td").Select(c => c.Value)];
}
