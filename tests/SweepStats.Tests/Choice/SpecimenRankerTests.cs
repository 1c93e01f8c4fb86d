using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Choice;

/// <summary>Rehearsed specimens A01, B01, C01 ... of lots of one, so that a lot's step sets what each shields.</summary>
public sealed class SpecimenRankerTests
{
    private static readonly RehearsalPlan Plan = new()
    {
        Points = 31,
        Lots = 4,
        Placements = 3,
        CoveredSweeps = 2,
        PlacementDeviationDb = 0.2,
        ShieldingStartDb = 40,
        ShieldingStopDb = 50,
    };

    private static readonly FrequencyBand Whole = new(new Hertz(30e6), new Hertz(1e9));

    [Fact]
    public void RanksCountInTheOrderOfGroupsAndWithinThemOfTheLowerLimits()
    {
        for (ulong seed = 1; seed <= 5; seed++)
        {
            BandRanking found = Ranked(Plan with { Seed = seed, Lots = 6, LotDeviationDb = 0.5 });
            Assert.Equal(Enumerable.Range(1, 6), found.Ranking.Select(r => r.Rank));
            Assert.Equal(
                found.Ranking.OrderBy(r => r.Group).ThenByDescending(r => r.MeanDb.Low!.Value).Select(r => r.Name),
                found.Ranking.Select(r => r.Name));
        }
    }

    [Fact]
    public void GroupsAreNumberedThroughAndHoldEveryCandidateOnce()
    {
        BandRanking found = Ranked(Plan with { Lots = 5, LotSteps = [Step("B", 3), Step("C", -3), Step("D", 3), Step("E", -6)] });
        Assert.Equal([("B", 1), ("D", 1), ("A", 2), ("C", 3), ("E", 4)],
            found.Ranking.Select(r => (r.Name.Lot, r.Group!.Value)).OrderBy(r => r.Item2).ThenBy(r => r.Lot));
        Assert.Equal(4, found.GroupCount);
        Assert.Equal(1, found.Ranking.Sum(r => r.ProbabilityBest!.Value.Low), 1e-9);
        Assert.All(found.Ranking, r => Assert.Equal(r.ProbabilityBest!.Value.Low, r.ProbabilityBest.Value.High));
        Assert.All(found.Ranking.Where(r => r.Group > 1), r => Assert.InRange(r.ProbabilityBest!.Value.High, 0, 0.001));
    }

    [Fact]
    public void ACandidateFarWorseChangesNothingForTheOthersGroups()
    {
        Campaign all = Rehearser.Draw(Plan with { LotSteps = [Step("B", 3), Step("C", 3), Step("D", -15)] }).Campaign;
        Campaign without = all with { Sweeps = [.. all.Sweeps.Where(s => s.Lot != "D")] };
        (string, int)[] before = [.. Ranked(without).Ranking.Select(r => (r.Name.Lot, r.Group!.Value))],
            after = [.. Ranked(all).Ranking.Select(r => (r.Name.Lot, r.Group!.Value))];
        Assert.Equal([.. before, ("D", 3)], after);
        Assert.Equal(["B", "C"], before.Where(b => b.Item2 == 1).Select(b => b.Item1).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void TheYardstickStandsBesideTheRanking()
    {
        BandRanking found = Ranked(Plan with { LotSteps = [Step("B", 8), Step("C", -2)] }, Choosing("B"));
        Assert.Equal(["A", "C", "D"], found.Ranking.Select(r => r.Name.Lot).Order(StringComparer.Ordinal));
        Assert.Equal(("B", 0, null, null, null), (found.Yardstick!.Name.Lot, found.Yardstick.Rank, found.Yardstick.Group,
            found.Yardstick.ProbabilityBest, found.Yardstick.BelowYardstickDb));
        Assert.Contains(found.Ranking, r => r.Group == 1);
        Assert.Equal(1, found.Ranking.Sum(r => r.ProbabilityBest!.Value.Low), 1e-9);
        foreach (RankedSpecimen specimen in found.Ranking)
        {
            // Placements 0.2 dB apart, three of each: the interval is a few tenths wide.
            BandFigure below = specimen.BelowYardstickDb!.Value;
            Assert.Equal(found.Yardstick.MeanDb.Value!.Value - specimen.MeanDb.Value!.Value, below.Value!.Value, 1e-9);
            Assert.InRange(specimen.Name.Lot == "C" ? 10 : 8, below.Low!.Value - 0.3, below.High!.Value + 0.3);
            Assert.InRange(below.High.Value - below.Low.Value, 0.1, 2);
        }

        Assert.All(Ranked(Plan).Ranking, r => Assert.Null(r.BelowYardstickDb));
    }

    [Fact]
    public void AHiddenYardstickLiesAtLeastThatFarAboveAndNarrowsNothing()
    {
        BandRanking found = Ranked(Plan with { LotSteps = [Step("B", 60)] }, Choosing("B"));
        Assert.Equal((31, 0), (found.PointCount, found.CappedLeftOut));
        Assert.True(found.Yardstick!.Open);
        Assert.All(found.Ranking,
            r => Assert.True(r.BelowYardstickDb is { Value: null, Low: > 5 and < 60, High: null }, $"{r.BelowYardstickDb}"));
    }

    [Fact]
    public void AHiddenSpecimenMayLieAnywhereAboveItsBound()
    {
        BandRanking found = Ranked(Plan with { LotSteps = [Step("B", 60)] }, Choosing("C"));
        Assert.True(found.Ranking.Single(r => r.Name.Lot == "B").BelowYardstickDb is { Value: null, Low: null, High: < 0 });
    }

    [Fact]
    public void FrequenciesWhereSomethingTransmitsAreLeftOutForAll()
    {
        RehearsalPlan carrier = Plan with { Ambient = [new AmbientCarrier(Rehearser.Draw(Plan).Grid[12], new Decibels(25))] };
        Campaign drawn = Rehearser.Draw(carrier).Campaign;
        BandRanking found = Ranked(drawn),
            moved = Ranked(Rehearsed.Changed(drawn, (s, f, level) => level + (f == 12 && s.Lot == "A" ? 9 : 0)));
        Assert.Equal((30, 1, 0), (found.PointCount, found.LeftOut, found.CappedLeftOut));
        Assert.Equal(found.Ranking.Select(r => (r.Name, r.MeanDb)), moved.Ranking.Select(r => (r.Name, r.MeanDb)));
    }

    [Fact]
    public void ASingleCappedFrequencyIsLeftOutForAllAndClosesTheMean()
    {
        FrequencyGrid grid = Rehearser.Draw(Plan).Grid;
        BandRanking found =
            Ranked(Plan with { LotSteps = [new LotStep("B", new Decibels(60), new FrequencyBand(grid[7], grid[7]))] });
        Assert.Equal((30, 0, 1), (found.PointCount, found.LeftOut, found.CappedLeftOut));
        Assert.All(found.Ranking, r => Assert.False(r.Open));
        Assert.Equal([0, 1, 0, 0], found.Ranking.OrderBy(r => r.Name).Select(r => r.CappedCount));
    }

    [Theory]
    [InlineData(0.6, true)]
    [InlineData(0.34, true)]
    [InlineData(0.2, true)]
    [InlineData(0.07, false)]
    public void ASpecimenThatIsHiddenWhereOthersAreSeenStaysOpenAndNarrowsNothing(double share, bool open)
    {
        var hidden = new FrequencyBand(new Hertz(1e9 / Math.Pow(1000.0 / 30, share)), new Hertz(1e9));
        BandRanking found = Ranked(Plan with { LotSteps = [new LotStep("B", new Decibels(60), hidden)] });
        RankedSpecimen b = found.Ranking.Single(r => r.Name.Lot == "B");
        Assert.Equal(open, b.Open);
        Assert.Equal(open ? (31, 0) : (31 - b.CappedCount, b.CappedCount), (found.PointCount, found.CappedLeftOut));
        Assert.All(found.Ranking.Where(r => r.Name.Lot != "B"), r => Assert.False(r.Open));
        if (open)
        {
            Assert.Equal(1, b.Group);
            Assert.Equal(1, b.ProbabilityBest!.Value.High);
            Assert.Null(b.MeanDb.Value);
            Assert.All(found.Ranking.Where(r => r.Name.Lot != "B"), r => Assert.Equal(0, r.ProbabilityBest!.Value.Low));
        }
    }

    // Over a third of the band nobody sees how much B shields, and there it shields more than all others: that they lie above
    // it in the rest rules it out no more.
    [Theory]
    [InlineData(0.33, -4, 1)]
    [InlineData(0.15, -1, 1)]
    [InlineData(0.07, -4, 2)]
    public void ABoundThatTopsTheOthersIsNotRuledOut(double share, double restDb, int group)
    {
        double from = 1e9 / Math.Pow(1000.0 / 30, share);
        LotStep[] steps = [new LotStep("B", new Decibels(60), new FrequencyBand(new Hertz(from), new Hertz(1e9))),
            new LotStep("B", new Decibels(restDb), new FrequencyBand(new Hertz(30e6), new Hertz(from * 0.99)))];
        for (ulong seed = 1; seed <= 5; seed++)
        {
            RankedSpecimen b = Ranked(Plan with { Seed = seed, LotSteps = [.. steps] }).Ranking.Single(r => r.Name.Lot == "B");
            Assert.Equal((group, group == 1), (b.Group, b.Open));
        }
    }

    // Where all of them are hidden nobody is ahead: the rest of the band decides, as before.
    [Fact]
    public void WhatHidesAllRulesOutByTheRest()
    {
        var upper = new FrequencyBand(new Hertz(400e6), new Hertz(1e9));
        BandRanking found = Ranked(Plan with
        {
            LotSteps = [.. new[] { "A", "B", "C", "D" }.Select(lot => new LotStep(lot, new Decibels(60), upper)),
                new LotStep("B", new Decibels(-4), new FrequencyBand(new Hertz(30e6), new Hertz(390e6)))],
        });
        Assert.All(found.Ranking, r => Assert.False(r.Open));
        Assert.Equal(2, found.Ranking.Single(r => r.Name.Lot == "B").Group);
    }

    [Fact]
    public void WithoutRepeatsNothingIsTold()
    {
        SpecimenChoice found = Rehearsed.Analysed(Plan with { Placements = 0, CoveredSweeps = 1, LotSteps = [Step("B", 10)] },
            Choosing("C")).Choice!;
        Assert.False(found.ByPlacement);
        Assert.All(found.Bands[0].Ranking,
            r => Assert.True(r is { Group: null, ProbabilityBest: null, DeviationDb: null, BelowYardstickDb: null }));
        Assert.Equal(0, found.Bands[0].GroupCount);
        Assert.Equal("B", found.Bands[0].Ranking[0].Name.Lot);
    }

    // By hand: far above the floor a repeat moves the shielding by what its level moves. The usual scatter is pooled, and none
    // counts for less.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void RepeatsArePlacementsWhereTheyAreNamedAndSweepsElsewhere(bool named)
    {
        Campaign drawn = Rehearser.Draw(
            Plan with { PlacementDeviationDb = 1, CoveredSweeps = 3, ShieldingStartDb = 20, ShieldingStopDb = 30 }).Campaign;
        Campaign campaign = named ? drawn : drawn with { Sweeps = [.. drawn.Sweeps.Select(Unplaced)] };
        SpecimenChoice found = Analysis.Run(campaign, new AnalysisPlan { Averaging = Plan.Averaging }).Choice!;
        Assert.Equal(named, found.ByPlacement);
        double[] squares =
        [
            .. drawn.Sweeps.Where(s => s.Role == SweepRole.Covered).GroupBy(s => s.Lot)
                .OrderBy(g => g.Key, StringComparer.Ordinal).Select(lot =>
                Math.Pow(Sample.StandardDeviation(
                    [.. lot.GroupBy(s => named ? s.Placement : s.Name, LogMean).Select(p => p.Average())]), 2)),
        ];
        double usual = squares.Average();
        Assert.Equal(squares.Select(s => Math.Sqrt(Math.Max(s, usual))),
            found.Bands[0].Ranking.OrderBy(r => r.Name).Select(r => r.DeviationDb!.Value), (a, b) => Math.Abs(a - b) < 1e-3);
    }

    [Fact]
    public void OneSeedGivesOneAnswerWhateverTheThreads()
    {
        Campaign drawn = Rehearser.Draw(Plan).Campaign;
        string Said(ulong seed, int threads) => string.Join('\n',
            Analysis.Run(drawn,
                new AnalysisPlan { Averaging = Plan.Averaging, Seed = seed, Threads = threads }).Choice!.Bands[0].Ranking);
        Assert.Equal(Said(1, 1), Said(1, 3));
        Assert.NotEqual(Said(1, 1), Said(2, 1));
    }

    [Fact]
    public void NamedBandsAreRankedByThemselves()
    {
        var upper = new NamedBand("upper", new FrequencyBand(new Hertz(200e6), new Hertz(1e9)));
        ImmutableArray<BandRanking> found = Rehearsed.Analysed(
            Plan with
            {
                LotSteps = [new LotStep("B", new Decibels(-6), upper.Band),
                new LotStep("B", new Decibels(10), new FrequencyBand(new Hertz(30e6), new Hertz(190e6)))],
            },
            new AnalysisPlan { Averaging = Plan.Averaging, NamedBands = [upper] }).Choice!.Bands;
        Assert.Equal([null, "upper"], found.Select(b => b.Name));
        Assert.Equal("B", found[0].Ranking[0].Name.Lot);
        Assert.Equal(("B", 2), (found[1].Ranking[^1].Name.Lot, found[1].Ranking[^1].Group!.Value));
        Assert.Equal(Rehearser.Draw(Plan).Grid.Hertz.ToArray().Count(f => f >= 200e6), found[1].PointCount);
    }

    [Fact]
    public void ASingleCandidateIsNoChoice()
    {
        Assert.Null(Rehearsed.Analysed(Plan with { Lots = 1 }).Choice);
        Assert.Null(Rehearsed.Analysed(Plan with { Lots = 2 }, Choosing("B")).Choice);
        Assert.NotNull(Rehearsed.Analysed(Plan with { Lots = 2 }).Choice);
    }

    // The reference's error is that of all and drops out: another reference moves every mean, and no group.
    [Fact]
    public void WhatTheReferenceIsOffByMovesNoGroup()
    {
        Campaign drawn = Rehearser.Draw(Plan with { LotDeviationDb = 0.5, Lots = 6 }).Campaign;
        Campaign shaky =
            Rehearsed.Changed(drawn, (s, _, level) => level + (s.Role == SweepRole.Reference ? 3 + (s.Name[^5] % 2) : 0));
        BandRanking calm = Ranked(drawn), off = Ranked(shaky);
        RankedSpecimen[] before = [.. calm.Ranking.OrderBy(r => r.Name)], after = [.. off.Ranking.OrderBy(r => r.Name)];
        Assert.Equal(before.Select(r => (r.Name, r.Group, r.ProbabilityBest)),
            after.Select(r => (r.Name, r.Group, r.ProbabilityBest)));
        Assert.True(after.Average(r => r.MeanDb.High - r.MeanDb.Low) > before.Average(r => r.MeanDb.High - r.MeanDb.Low) + 0.1);
        Assert.All(before.Zip(after), p => Assert.InRange(p.Second.MeanDb.Value!.Value - p.First.MeanDb.Value!.Value, 3, 4));
    }

    [Fact]
    public void ABandWithNothingToCompareHasNoFigure()
    {
        RehearsalPlan carried = Plan with { Ambient = [new AmbientCarrier(new Hertz(173.2e6), new Decibels(20))] };
        Campaign campaign = Rehearser.Draw(carried).Campaign;
        double at = campaign.Sweeps[0].Grid.Hertz.ToArray().MinBy(f => Math.Abs(f - 173.2e6));
        var narrow = new NamedBand("carrier", new FrequencyBand(new Hertz(at - 1), new Hertz(at + 1)));
        BandRanking found =
            Analysis.Run(campaign, new AnalysisPlan { Averaging = Plan.Averaging, NamedBands = [narrow] }).Choice!.Bands[1];
        Assert.Equal((0, 1), (found.PointCount, found.LeftOut));
        Assert.All(found.Ranking,
            r => Assert.Equal((default(BandFigure), null, null, true), (r.MeanDb, r.Group, r.ProbabilityBest, r.Open)));
    }

    [Fact]
    public void BoundsThatRepeatTellNoScatter()
    {
        // A alone is swept more than once, and lies under the floor everywhere.
        Campaign all = Rehearser.Draw(Plan with { Placements = 0, CoveredSweeps = 3, LotSteps = [Step("A", 60)] }).Campaign;
        Campaign single = all with
        {
            Sweeps =
            [.. all.Sweeps.Where(s => s.Lot is null or "A" || s.Name.EndsWith("1.csv", StringComparison.Ordinal))],
        };
        int kept = single.Sweeps.Count(s => s.Lot is not null and not "A");
        Assert.Equal(3, kept);
        Assert.All(Ranked(single).Ranking, r => Assert.Equal((null, null, null), (r.Group, r.ProbabilityBest, r.DeviationDb)));
    }

    private static LotStep Step(string lot, double db) => new(lot, new Decibels(db), Whole);

    private static AnalysisPlan Choosing(string yardstick) =>
        new()
        {
            Averaging = Plan.Averaging,
            Choice = new ChoiceQuestion { Yardstick = new SpecimenName(yardstick, yardstick + "01") },
        };

    // What is silent was opened, and the source was on.
    private static BandRanking Ranked(RehearsalPlan plan, AnalysisPlan? choices = null)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Sweep reference = drawn.Sweeps.First(s => s.Role == SweepRole.Reference);
        IEnumerable<Sweep> opened = plan.LotSteps.IsDefaultOrEmpty ? [] : drawn.Sweeps
            .Where(s => s.Role == SweepRole.Covered).GroupBy(s => s.Lot).Select(lot => new Sweep(
                $"covered/{lot.Key}-opened.csv", SweepRole.Covered, reference.Grid, reference.Levels, reference.Scale)
            {
                Lot = lot.Key,
                Specimen = lot.First().Specimen,
                Placement = lot.First().Placement,
                ExcludedBecause = "opened",
            });
        return Analysis.Run(drawn with { Sweeps = [.. drawn.Sweeps, .. opened] },
            choices ?? new AnalysisPlan { Averaging = plan.Averaging }).Choice!.Bands[0];
    }

    private static BandRanking Ranked(Campaign campaign) =>
        Analysis.Run(campaign, new AnalysisPlan { Averaging = Plan.Averaging }).Choice!.Bands[0];

    private static Sweep Unplaced(Sweep sweep) =>
        new(sweep.Name, sweep.Role, sweep.Grid, sweep.Levels, sweep.Scale) { Lot = sweep.Lot, Specimen = sweep.Specimen };

    private static double LogMean(Sweep sweep)
    {
        double[] hertz = sweep.Grid.Hertz.ToArray();
        return Enumerable.Range(1, hertz.Length - 1).Sum(
            f => Math.Log(hertz[f] / hertz[f - 1]) * (sweep.Levels[f] + sweep.Levels[f - 1]) / 2)
            / Math.Log(hertz[^1] / hertz[0]);
    }
}
