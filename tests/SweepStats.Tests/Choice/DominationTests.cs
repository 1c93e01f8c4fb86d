using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Choice;

/// <summary>Made-up rankings of specimens A, B, C with a price, of which less is better, and a width, of which more is.</summary>
public sealed class DominationTests
{
    private static readonly ChoiceQuestion Both = new() { LowerIsBetter = ["price"], HigherIsBetter = ["width"] };

    [Fact]
    public void WhatIsNoBetterInAnythingAndWorseInSomethingIsDominated()
    {
        Assert.Equal([("B", "A")], Of([Ranked("A", 50), Ranked("B", 48)], ("A", 30, 2), ("B", 35, 2)));
        Assert.Equal([("B", "A")], Of([Ranked("A", 50), Ranked("B", 48)], ("A", 30, 2), ("B", 30, 1)));
        Assert.Equal([("B", "A")], Of([Ranked("A", 50), Ranked("B", 50)], ("A", 30, 2), ("B", 35, 2)));
    }

    [Fact]
    public void OneThingThatIsBetterIsAReason()
    {
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 48)], ("A", 30, 2), ("B", 29, 1)));
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 48)], ("A", 30, 2), ("B", 35, 3)));
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 50.1)], ("A", 30, 2), ("B", 35, 1)));
    }

    [Fact]
    public void EqualInEverythingIsNotDominated() =>
    Assert.Empty(Of([Ranked("A", 50), Ranked("B", 50)], ("A", 30, 2), ("B", 30, 2)));

    // The order of means within a group is chance.
    [Fact]
    public void AMeanThatIsHigherIsBetterOnlyWhereTheGroupsTellIt()
    {
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 48)], ("A", 30, 2), ("B", 30, 2)));
        Assert.Equal([("B", "A")], Of([Ranked("A", 50), Ranked("B", 48) with { Group = 2 }], ("A", 30, 2), ("B", 30, 2)));
        Assert.Empty(
            Of([Ranked("A", 50) with { Group = null }, Ranked("B", 48) with { Group = null }], ("A", 30, 2), ("B", 30, 2)));
    }

    [Fact]
    public void WhatIsNotKnownIsNeitherGoodNorBad()
    {
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 40) with { Group = 2 }], ("A", null, 2), ("B", 30, 1)));
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 40) with { Group = 2 }], ("A", 30, 2), ("B", null, 1)));
        Assert.Empty(Of([Ranked("A", 50), Ranked("B", 40) with { Group = 2 }], ("A", null, 2), ("B", null, 2)));
    }

    [Fact]
    public void WhatMayShieldAnyAmountIsNeverDominatedAndDominatesByItsBound()
    {
        RankedSpecimen open = Ranked("A", 50) with { Open = true, MeanDb = new BandFigure(null, 49, null) };
        Assert.Empty(Of([Ranked("B", 60), open with { Group = 2 }], ("A", 99, 1), ("B", 30, 2)));
        Assert.Equal([("B", "A")], Of([open, Ranked("B", 49)], ("A", 30, 2), ("B", 35, 2)));
        Assert.Empty(Of([open, Ranked("B", 49.1)], ("A", 30, 2), ("B", 35, 2)));
    }

    [Fact]
    public void EveryBandHasToAgree()
    {
        BandRanking low = Band(Ranked("A", 50), Ranked("B", 48)), high = Band(Ranked("A", 47), Ranked("B", 48));
        ImmutableArray<SpecimenProperty> prices = Properties(("A", 30, 2), ("B", 35, 2));
        Assert.Single(Domination.Among([low, low], prices, Both));
        Assert.Empty(Domination.Among([low, high], prices, Both));
        Assert.Empty(Domination.Among([high, low], prices, Both));
        // A group in one band is enough where nothing else differs.
        BandRanking told = Band(Ranked("A", 50), Ranked("B", 48) with { Group = 2 });
        Assert.Single(Domination.Among([low, told], Properties(("A", 30, 2), ("B", 30, 2)), Both));
    }

    [Fact]
    public void TheBestRankedOfSeveralIsNamedAndNamesComeInTheirOrder() => Assert.Equal(
        [("B", "C"), ("D", "C")],
        Of([Ranked("C", 52), Ranked("A", 51), Ranked("D", 45), Ranked("B", 44)], ("A", 20, 2), ("B", 40, 1), ("C", 30, 2),
            ("D", 35, 2)));

    [Fact]
    public void WhereNothingIsWeighedNothingIsDominated() =>
        Assert.Empty(Domination.Among([Band(Ranked("A", 50), Ranked("B", 40) with { Group = 2 })],
            Properties(("A", 30, 2), ("B", 35, 1)), new ChoiceQuestion { Shown = ["price"] }));

    [Fact]
    public void OnePropertyIsEnoughToWeigh()
    {
        ImmutableArray<BandRanking> bands = [Band(Ranked("A", 50), Ranked("B", 48))];
        ImmutableArray<SpecimenProperty> properties = Properties(("A", 30, 2), ("B", 35, 1));
        Assert.Single(Domination.Among(bands, properties, new ChoiceQuestion { LowerIsBetter = ["price"] }));
        Assert.Single(Domination.Among(bands, properties, new ChoiceQuestion { HigherIsBetter = ["width"] }));
    }

    private static RankedSpecimen Ranked(string name, double mean) => new()
    {
        Name = new SpecimenName(name, "1"),
        MeanDb = new BandFigure(mean, mean - 1, mean + 1),
        AtLeast = null,
        CappedCount = 0,
        Open = false,
        DeviationDb = 0.3,
        Group = 1,
    };

    private static BandRanking Band(params ImmutableArray<RankedSpecimen> ranking) => new()
    {
        Name = null,
        Band = new FrequencyBand(new Hertz(1e6), new Hertz(2e6)),
        PointCount = 2,
        LeftOut = 0,
        CappedLeftOut = 0,
        Ranking = ranking,
        Yardstick = null,
    };

    private static ImmutableArray<SpecimenProperty> Properties(params (string Name, double? Price, double? Width)[] all) =>
    [
        .. all.Where(p => p.Price is not null)
            .Select(p => new SpecimenProperty(new SpecimenName(p.Name, "1"), "price", $"{p.Price}", p.Price)),
        .. all.Where(p => p.Width is not null)
            .Select(p => new SpecimenProperty(new SpecimenName(p.Name, "1"), "width", $"{p.Width}", p.Width)),
    ];

    private static IEnumerable<(string Name, string By)> Of(ImmutableArray<RankedSpecimen> ranking,
        params (string, double?, double?)[] properties) =>
        Domination.Among([Band(ranking)], Properties(properties), Both).Select(d => (d.Name.Lot, d.By.Lot));
}
