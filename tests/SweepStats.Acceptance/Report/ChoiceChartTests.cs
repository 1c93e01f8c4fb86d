using System.Collections.Immutable;
using System.Xml.Linq;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Report;
using SweepStats.Report.Choice;
using SweepStats.Report.Drawing;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The ranking of specimens as a chart.</summary>
public sealed class ChoiceChartTests
{
    private static readonly Lazy<AnalysisResult> Drawn =
        new(() => Samples.Run(Samples.Lots with { Lots = 1, SpecimensPerLot = 4 }, Samples.Power));

    [Theory]
    [InlineData(0.62, 0.62, "62 %")]
    [InlineData(0.062, 0.062, "6.2 %")]
    [InlineData(0.0004, 0.0004, "< 0.1 %")]
    [InlineData(0.0, 0.0, "< 0.1 %")]
    [InlineData(0.9996, 0.9996, "> 99.9 %")]
    [InlineData(1.0, 1.0, "> 99.9 %")]
    [InlineData(0.0, 0.621, "≤ 63 %")]
    [InlineData(0.0, 0.0003, "≤ 0.1 %")]
    [InlineData(0.629, 1.0, "≥ 62 %")]
    [InlineData(0.0, 1.0, "not known")]
    public void AProbabilityIsRoundedAwayFromTheClaim(double low, double high, string printed) =>
        Assert.Equal(printed,
            ChoiceChartWords.BestProbability(Ranked("A01", 40) with { ProbabilityBest = new Interval(low, high) }));

    [Fact]
    public void NothingIsKnownOfAProbabilityWhereNothingRepeats() =>
    Assert.Equal("not known", ChoiceChartWords.BestProbability(Ranked("A01", 40)));

    [Fact]
    public void GroupsComeInTheirOrderThoughAWideIntervalRanksLow()
    {
        XElement[] texts =
            Texts(Of(Ranked("A02", 40) with { Group = 2, ProbabilityBest = new Interval(0, 0) },
                Ranked("A01", 39) with { Group = 1, ProbabilityBest = new Interval(0.9, 0.9) },
                Ranked("A03", 38) with { Group = 1, ProbabilityBest = new Interval(0.1, 0.1) }));
        string[] rows =
            [.. texts.Where(t => t.Value.StartsWith("A/", StringComparison.Ordinal)
                || t.Value.StartsWith("Group", StringComparison.Ordinal)).OrderBy(Height).Select(t => t.Value)];
        Assert.Equal(["Group 1: not to be told from the best", "A/A01", "A/A03", "Group 2", "A/A02"], rows);
        Assert.Equal(Height(texts.Single(t => t.Value == "A/A03")), Height(texts.Single(t => t.Value == "10 %")), 1.0);
    }

    [Fact]
    public void TheYardstickStandsBesideTheGroups()
    {
        BandRanking band =
            Of(Ranked("A01", 42) with { Group = 1 }, Ranked("A02", 41) with { Group = 1 }) with { Yardstick = Ranked("A04", 55) };
        string[] labels = [.. Texts(band).Select(t => t.Value)];
        Assert.Contains("A/A04 (yardstick)", labels);
        Assert.Contains("yardstick, not a candidate", labels);
        Assert.DoesNotContain(Texts(band with { Yardstick = null }),
            t => t.Value.Contains("yardstick", StringComparison.Ordinal));
    }

    [Fact]
    public void ASpecimenWithoutReasonToBeChosenIsMarked()
    {
        BandRanking band = Of(Ranked("A01", 42) with { Group = 1 }, Ranked("A02", 41) with { Group = 1 });
        const string Legend = "no better than another in anything weighed";
        Assert.Contains(Texts(band, new DominatedSpecimen(new SpecimenName("A", "A02"), new SpecimenName("A", "A01"))),
            t => t.Value == Legend);
        Assert.DoesNotContain(Texts(band), t => t.Value == Legend);
    }

    [Fact]
    public void OnlyABoundIsDrawnWhereNoMoreIsKnown()
    {
        RankedSpecimen bound = Ranked("A01", 42) with { MeanDb = new BandFigure(null, 42, null), Group = 1 };
        RankedSpecimen unknown =
            Ranked("A02", 41) with { MeanDb = new BandFigure(null, null, null), AtLeast = null, Group = null };
        string[] labels = [.. Texts(Of(bound, unknown)).Select(t => t.Value)];
        Assert.Contains("≥ 42.0 dB", labels);
        Assert.Contains("nothing can be claimed", labels);
        Assert.Contains("Not compared", labels);
        Assert.DoesNotContain(ChartBook.Of(With(Of(unknown, unknown with { Name = new SpecimenName("A", "A03") }))),
            c => c.Kind == ChartKind.Choice);
    }

    [Fact]
    public void ClaimsThatWouldSqueezeTheMeansAreLeftToTheTables()
    {
        const string Legend = "at least, at every measured frequency";
        BandRanking near = Of(Ranked("A01", 42) with { AtLeast = new Decibels(40) }, Ranked("A02", 41));
        BandRanking far = Of(Ranked("A01", 42) with { AtLeast = new Decibels(20) }, Ranked("A02", 41));
        Assert.Contains(Texts(near), t => t.Value == Legend);
        Assert.DoesNotContain(Texts(far), t => t.Value is Legend or "20");
    }

    [Fact]
    public void FortyRowsAreShownAndTheRestIsSaid()
    {
        RankedSpecimen[] many = [.. Enumerable.Range(1, 43)
            .Select(i => Ranked($"A{i:D2}", 50 - (i * 0.1)) with { Group = 1, ProbabilityBest = new Interval(0.02, 0.02) })];
        XElement[] texts = Texts(Of([.. many]));
        Assert.Equal(40, texts.Count(t => t.Value.StartsWith("A/", StringComparison.Ordinal)));
        Assert.Contains(texts, t => t.Value.EndsWith("; the first 40 of 43 specimens", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutRepeatsThereAreNoGroupsAndItIsSaid()
    {
        XElement[] texts = Texts(Of(Ranked("A01", 42), Ranked("A02", 41)));
        Assert.DoesNotContain(texts, t => t.Value.StartsWith("Group", StringComparison.Ordinal) || t.Value == "is the best");
        Assert.Contains(texts, t => t.Value.EndsWith("none can be told from another", StringComparison.Ordinal));
    }

    private static RankedSpecimen Ranked(string name, double mean) => new()
    {
        Name = new SpecimenName("A", name),
        MeanDb = new BandFigure(mean, mean - 0.5, mean + 0.5),
        AtLeast = new Decibels(mean - 1),
        CappedCount = 0,
        Open = false,
        DeviationDb = 0.3,
    };

    private static BandRanking Of(params ImmutableArray<RankedSpecimen> ranking) =>
        Drawn.Value.Choice!.Bands[0] with { Ranking = ranking };

    private static AnalysisResult With(BandRanking band, params ImmutableArray<DominatedSpecimen> dominated) =>
        Drawn.Value with { Choice = Drawn.Value.Choice! with { Bands = [band], Dominated = dominated } };

    private static XElement[] Texts(BandRanking band, params ImmutableArray<DominatedSpecimen> dominated) =>
        [.. XDocument.Parse(System.Text.Encoding.UTF8.GetString(
            SvgPicture.Of(ChartBook.Of(With(band, dominated)).Single(c => c.Name == "choice")).Svg)).Descendants()
            .Where(e => e.Name.LocalName == "text")];

    private static double Height(XElement text) => ChartText.Middle(text);
}
