using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Lots of several campaigns; truth is alike, as specimens and lots are drawn without differences unless said.</summary>
public sealed class LotHistoryTests
{
    private static readonly RehearsalPlan Plan = new()
    {
        Points = 31,
        Lots = 2,
        SpecimensPerLot = 3,
        CoveredSweeps = 3,
        ShieldingStartDb = 30,
        ShieldingStopDb = 50,
        SpecimenDeviationDb = 0.3,
    };

    private static readonly Campaign Spring = Rehearser.Draw(Plan with { Seed = 5 }).Campaign;

    private static readonly Campaign Autumn = Rehearser.Draw(Plan with { Seed = 6 }).Campaign;

    [Fact]
    public void AnotherSourceLevelMakesNoDifference()
    {
        // 2 dB more in reference and covered sweeps alike; the floor, 48 dB below, has little to say.
        LotHistory plain = Of(Spring, Autumn), louder = Of(Spring, Raised(Autumn, 2, SweepRole.Reference, SweepRole.Covered));
        Assert.All(plain.Pairs.Zip(louder.Pairs),
            p => Assert.Equal(p.First.Tested!.Difference, p.Second.Tested!.Difference, 0.01));
        Assert.All(louder.Pairs, p => Assert.True(p.Adjusted > 0.05, $"{p}"));
    }

    [Fact]
    public void AReferenceThatIsOffIsADifferenceBetweenCampaignsAndNoneWithin()
    {
        LotHistory plain = Of(Spring, Autumn), off = Of(Spring, Raised(Autumn, 3, SweepRole.Reference));
        Assert.All(plain.Pairs.Zip(off.Pairs), p => Assert.Equal(
            p.First.Tested!.Difference - (Within(p.First) ? 0 : 3), p.Second.Tested!.Difference, 0.001));
        Assert.All(off.Pairs, p => Assert.Equal(!Within(p), p.Adjusted < 0.05));
    }

    [Fact]
    public void LotsStandCampaignByCampaignWithEveryPair()
    {
        LotHistory found = Of(Spring, Autumn);
        Assert.Equal([("1", "A"), ("1", "B"), ("2", "A"), ("2", "B")], found.Lots.Select(l => (l.Campaign, l.Figures.Lot)));
        Assert.Equal(6, found.Pairs.Length);
        Assert.Equal(2, found.Pairs.Count(Within));
        Assert.Equal(31, found.PointCount);
        Assert.Equal(1, found.ClearShare, 1e-12);
        // The mean over the band and the single frequencies are asked: twice the smaller p-value, then the number of pairs.
        double[] both =
            [.. found.Pairs.Select(
                p => Math.Min(1, 2 * Math.Min(p.Tested!.ProbabilityAlike, p.Points.Min(f => f.Adjusted!.Value))))];
        Assert.Equal(both, found.Pairs.Select(p => p.Probability!.Value));
        Assert.Equal(Holm.Adjusted(both), found.Pairs.Select(p => p.Adjusted!.Value));
    }

    // Within: Welch's error of the lot means. Between: that and the errors of both reference means, s/√n of the sweeps' own band
    // means (far above the floor).
    [Fact]
    public void ReferencesEnlargeTheErrorBetweenCampaignsOnly()
    {
        Campaign shaky = Rehearsed.Changed(Autumn,
            (s, _, level) => level + (s.Role == SweepRole.Reference ? s.Name[^5] % 2 == 0 ? 0.7 : -0.6 : 0));
        LotHistory calm = Of(Spring, Autumn), found = Of(Spring, shaky);
        double reference = Math.Pow(ReferenceError(Spring), 2) + Math.Pow(ReferenceError(shaky), 2);
        Assert.True(ReferenceError(shaky) > 3 * ReferenceError(Autumn));
        foreach ((HistoryPair before, HistoryPair pair) in calm.Pairs.Zip(found.Pairs))
        {
            double own = Math.Pow(OwnError(pair.First), 2) + Math.Pow(OwnError(pair.Second), 2);
            Assert.Equal(Math.Sqrt(own + (Within(pair) ? 0 : reference)), pair.Tested!.StandardError, 0.002);
            if (Within(pair))
            {
                Assert.Equal(before.Tested!.StandardError, pair.Tested.StandardError, 1e-4);
            }
        }
    }

    [Fact]
    public void WhatIsStatedOfBothIsInTheErrorBetweenThem()
    {
        var stated = new AnalysisPlan
        {
            Averaging = Plan.Averaging,
            Uncertainties =
                [new UncertaintyEntry { Name = "cable", HalfWidthDb = 1.2, Distribution = ErrorDistribution.Rectangular,
                    ActsOn = ErrorActsOn.Reference }],
        };
        foreach ((HistoryPair plain, HistoryPair pair) in Of(Spring, Autumn).Pairs.Zip(Of(stated, Spring, Autumn).Pairs))
        {
            // A rectangle of half-width a has the variance a²/3, once for each campaign.
            double added = Within(pair) ? 0 : 2 * 1.2 * 1.2 / 3;
            Assert.Equal(Math.Sqrt(Math.Pow(plain.Tested!.StandardError, 2) + added), pair.Tested!.StandardError, 1e-6);
        }
    }

    [Fact]
    public void AnotherOrderOfCampaignsTurnsTheSigns()
    {
        LotHistory found = Of(Spring, Autumn), turned = Of(Autumn, Spring);
        foreach (HistoryPair pair in found.Pairs.Where(p => !Within(p)))
        {
            HistoryPair back =
                turned.Pairs.Single(p => p.First.Campaign == "1" && p.Second.Campaign == "2"
                    && p.First.Figures.Lot == pair.Second.Figures.Lot && p.Second.Figures.Lot == pair.First.Figures.Lot);
            Assert.Equal(-pair.Tested!.Difference, back.Tested!.Difference, 1e-9);
            Assert.Equal(pair.Tested.StandardError, back.Tested.StandardError, 1e-9);
            Assert.Equal(pair.Adjusted!.Value, back.Adjusted!.Value, 1e-9);
        }
    }

    [Fact]
    public void ASingleReferenceSweepTellsNothingBetweenCampaigns()
    {
        LotHistory found = Of(Spring, Rehearser.Draw(Plan with { Seed = 6, ReferenceSweeps = 1 }).Campaign);
        Assert.All(found.Pairs, p => Assert.Equal(Within(p), p.Tested is not null));
        Assert.All(found.Pairs, p => Assert.Equal(Within(p), p.Adjusted is not null));
    }

    [Fact]
    public void LotsOfOneSpecimenMakeNoPair()
    {
        LotHistory found = Of(Spring, Rehearser.Draw(Plan with { Seed = 6, SpecimensPerLot = 1 }).Campaign);
        Assert.Equal(4, found.Lots.Length);
        Assert.True(Within(Assert.Single(found.Pairs)));
    }

    [Fact]
    public void AnotherGridIsReadBetweenItsFrequenciesAlongTheirLogarithm()
    {
        CampaignLots fine = Lots(Spring, "1"), coarse = Lots(Rehearser.Draw(Plan with { Seed = 6, Points = 7 }).Campaign, "2");
        FrequencyGrid grid = coarse.Campaign.Grid, own = fine.Campaign.Grid;
        double[] tenth = [own.Hertz[3], Math.Sqrt(own.Hertz[10] * own.Hertz[11]),
            own.Hertz[20] * Math.Pow(own.Hertz[21] / own.Hertz[20], 0.3)];
        double[] read = new CampaignSpecimens(fine, new FrequencyGrid([.. tenth])).Values[0];
        double At(int f) => ((ShieldingReading.Measured)fine.Curves[0].Readings[f]).Shielding.Value.Value;
        Assert.Equal(At(3), read[0], 1e-12);
        Assert.Equal((At(10) + At(11)) / 2, read[1], 1e-9);
        Assert.Equal((0.7 * At(20)) + (0.3 * At(21)), read[2], 1e-9);
        LotHistory found = LotHistoryComparer.Of([fine, coarse], new LotQuestion());
        Assert.Equal((7, grid.Band), (found.PointCount, found.Band));
        Assert.All(found.Pairs, p => Assert.True(p.Adjusted > 0.05));
    }

    [Fact]
    public void BesideABoundNothingIsKnownBetween()
    {
        CampaignLots capped = Lots(Rehearser.Draw(Plan with { ShieldingStopDb = 90 }).Campaign, "1");
        FrequencyGrid own = capped.Campaign.Grid;
        int first = Enumerable.Range(0, own.Count).First(f => capped.Curves[0].Readings[f] is ShieldingReading.AtLeast);
        var between =
            new CampaignSpecimens(capped, new FrequencyGrid([own.Hertz[first - 1], own.Hertz[first] - 1000, own.Hertz[first]]));
        Assert.Equal([false, true, true], between.Bounds[0]);
    }

    [Fact]
    public void OnlyTheBandOfAllIsCompared()
    {
        Campaign narrow =
            Rehearser.Draw(Plan with
            {
                Seed = 6,
                Band = new FrequencyBand(new Hertz(100e6), new Hertz(500e6)),
                ShieldingStartDb = 37,
                ShieldingStopDb = 46,
            }).Campaign;
        LotHistory found = Of(Spring, narrow);
        Assert.InRange(found.Band.Start.Value, 100e6, 120e6);
        Assert.InRange(found.Band.Stop.Value, 420e6, 500e6);
        // Plain means too: over the whole of the first campaign they would lie at 40 dB, the middle of 30 and 50.
        double[] hertz = [.. Spring.Sweeps[0].Grid.Hertz.ToArray()];
        double Level(Func<Sweep, bool> of) =>
            Spring.Sweeps.Where(of).Average(s => s.Levels.Where((_, f) => found.Band.Contains(new Hertz(hertz[f]))).Average());
        // Read at the frequencies of the other campaign, and weighted by log frequency.
        Assert.Equal(Level(s => s.Role == SweepRole.Reference) - Level(s => s.Lot == "A"),
            found.Lots[0].Figures.PlainMeanDb, 0.05);
    }

    [Fact]
    public void CampaignsWithoutABandInCommonAreRefused()
    {
        Campaign apart = Rehearser.Draw(Plan with { Band = new FrequencyBand(new Hertz(2e9), new Hertz(3e9)) }).Campaign;
        Assert.Throws<ArgumentException>(() => Of(Spring, apart));
        Assert.Null(LotHistoryComparer.SharedBand([Lots(Spring, "1"), Lots(apart, "2")]));
        Assert.Equal(Spring.Sweeps[0].Grid.Band, LotHistoryComparer.SharedBand([Lots(Spring, "1"), Lots(Autumn, "2")]));
        Assert.Throws<ArgumentException>(() => Of(Spring));
    }

    [Fact]
    public void WhereSomeSpecimenIsHiddenEverywhereThereAreNoFigures()
    {
        LotHistory found =
            Of(Spring, Rehearser.Draw(Plan with { Seed = 6, ShieldingStartDb = 90, ShieldingStopDb = 90 }).Campaign);
        Assert.Equal(0, found.ClearShare);
        Assert.All(found.Pairs, p => Assert.Null(p.Tested));
        // Lots of the other campaign are known all the same.
        Assert.All(found.Pairs, p => Assert.Equal(p.First.Campaign == "1" && Within(p), p.Adjusted is not null));
        Assert.All(found.Pairs.Where(p => p.Second.Campaign == "2"),
            p => Assert.All(p.Points, f => Assert.True(f.Hidden && f.Probability is null && double.IsNaN(f.DifferenceDb))));
        Assert.Empty(found.OverTime);
        Assert.All(found.Lots, l => Assert.True(double.IsNaN(l.Figures.MeanDb)));
        Assert.All(found.Lots, l => Assert.True(double.IsFinite(l.Figures.PlainMeanDb)));
    }

    private static bool Within(HistoryPair pair) => pair.First.Campaign == pair.Second.Campaign;

    private static Campaign Raised(Campaign campaign, double db, params SweepRole[] roles) =>
        Rehearsed.Changed(campaign, (s, _, level) => level + (roles.Contains(s.Role) ? db : 0));

    // Student's half-width back to the standard error: t(0.975, 2) = 4.302653 (tables, from memory).
    private static double OwnError(HistoryLot lot) =>
        (lot.Figures.BetweenLotsIntervalDb!.Value.High - lot.Figures.MeanDb) / 4.302653;

    private static double ReferenceError(Campaign campaign)
    {
        double[] means = [.. campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Select(s =>
            s.Levels.Zip(s.Levels.Skip(1), s.Grid.Hertz.ToArray().Zip(s.Grid.Hertz.ToArray().Skip(1), (a, b) => Math.Log(b / a)))
                .Sum(p => p.Third * (p.First + p.Second) / 2)
            / Math.Log(s.Grid.Hertz[^1] / s.Grid.Hertz[0]))];
        return Sample.StandardDeviation(means) / Math.Sqrt(means.Length);
    }

    private static CampaignLots Lots(Campaign campaign, string label, AnalysisPlan? plan = null)
    {
        AnalysisResult result = Analysis.Run(campaign, plan ?? new AnalysisPlan { Averaging = Plan.Averaging });
        return new CampaignLots(label, result.Campaign, result.Curves);
    }

    private static LotHistory Of(params Campaign[] campaigns) => Of(new AnalysisPlan { Averaging = Plan.Averaging }, campaigns);

    private static LotHistory Of(AnalysisPlan plan, params Campaign[] campaigns) =>
        LotHistoryComparer.Of([.. campaigns.Select((c, i) => Lots(c, $"{i + 1}", plan))], new LotQuestion());
}
