using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>
/// Lots of two campaigns where the second's lot B shields 4 dB less from 300 to 600 MHz; two reference sweeps each.
/// </summary>
public sealed class LotHistoryFrequencyTests
{
    private static readonly FrequencyBand Worse = Megahertz(300, 600);

    private static readonly RehearsalPlan Plan = new()
    {
        Points = 101,
        Lots = 2,
        SpecimensPerLot = 4,
        CoveredSweeps = 3,
        ReferenceSweeps = 2,
        ShieldingStartDb = 40,
        ShieldingStopDb = 40,
        SpecimenDeviationDb = 0.4,
    };

    private static readonly Campaign Spring = Rehearser.Draw(Plan with { Seed = 5 }).Campaign;

    private static readonly Campaign Autumn =
        Rehearser.Draw(Plan with { Seed = 6, LotSteps = [new LotStep("B", new Decibels(-4), Worse)] }).Campaign;

    private static readonly LotHistory Found = Of(Spring, Autumn);

    [Fact]
    public void ALotThatIsWorseInAPartOfTheBandIsFoundThere()
    {
        HistoryPair pair = Pair(Found, "B");
        Assert.True(Found.Differ(pair), $"{pair.Adjusted}");
        // The mean over the band alone does not show it.
        Assert.True(pair.Tested!.ProbabilityAlike > 0.01);
        HistoryStretch stretch = Assert.Single(Found.Stretches, s => s.First == pair.First && s.Second == pair.Second);
        double step = Math.Pow(1000.0 / 30, 1.0 / 100);
        Assert.InRange(stretch.Band.Start.Value, 300e6 / (step * step), 300e6 * step * step);
        Assert.InRange(stretch.Band.Stop.Value, 600e6 / (step * step), 600e6 * step * step);
        Assert.InRange(stretch.ApartDb, 3, 5);
        Assert.Equal(0, stretch.Hidden);
        Assert.False(Found.Differ(Pair(Found, "A")));
    }

    [Fact]
    public void StretchesAreOnlyOfPairsThatDiffer()
    {
        Assert.All(Found.Stretches,
            s => Assert.True(Found.Differ(Found.Pairs.Single(p => p.First == s.First && p.Second == s.Second))));
        // B of autumn is in each of them.
        Assert.All(Found.Stretches, s => Assert.Contains("2: B", new[] { s.First.Label, s.Second.Label }));
        Assert.Empty(Of(Spring, Rehearser.Draw(Plan with { Seed = 6 }).Campaign).Stretches);
    }

    [Fact]
    public void AShiftOfOneReferenceShiftsEveryDifferenceBetweenCampaignsAndNothingElse()
    {
        LotHistory shifted =
            Of(Spring, Rehearsed.Changed(Autumn, (s, _, level) => level + (s.Role == SweepRole.Reference ? 1.5 : 0)));
        foreach ((HistoryPair before, HistoryPair after) in Found.Pairs.Zip(shifted.Pairs))
        {
            double shift = before.IsWithinACampaign ? 0 : 1.5;
            Assert.All(before.Points.Zip(after.Points),
                p => Assert.Equal(p.First.DifferenceDb - shift, p.Second.DifferenceDb, 1e-4));
            Assert.All(before.Points.Zip(after.Points), p => Assert.Equal(p.First.ErrorDb, p.Second.ErrorDb, 1e-4));
        }
    }

    [Fact]
    public void AnotherOrderOfCampaignsTurnsTheSignsOnly()
    {
        LotHistory turned = Of(Autumn, Spring);
        foreach (string lot in new[] { "A", "B" })
        {
            (HistoryPair before, HistoryPair after) = (Pair(Found, lot), Pair(turned, lot));
            Assert.Equal(before.Adjusted!.Value, after.Adjusted!.Value, 1e-9);
            Assert.All(before.Points.Zip(after.Points), p => Assert.Equal(-p.First.DifferenceDb, p.Second.DifferenceDb, 1e-9));
            Assert.All(before.Points.Zip(after.Points),
                p => Assert.Equal((p.First.ErrorDb, p.First.Adjusted!.Value),
                    (p.Second.ErrorDb, p.Second.Adjusted!.Value), Near));
        }
    }

    [Fact]
    public void TheOrderOfSpecimensIsNothing()
    {
        IEnumerable<Sweep> covered = Autumn.Sweeps.Where(s => s.Role == SweepRole.Covered).GroupBy(s => (s.Lot, s.Specimen))
            .Reverse().OrderBy(g => g.Key.Lot, StringComparer.Ordinal).SelectMany(g => g);
        LotHistory mixed =
            Of(Spring, Autumn with { Sweeps = [.. Autumn.Sweeps.Where(s => s.Role != SweepRole.Covered), .. covered] });
        Assert.All(Pair(Found, "B").Points.Zip(Pair(mixed, "B").Points),
            p => Assert.Equal((p.First.DifferenceDb, p.First.ErrorDb), (p.Second.DifferenceDb, p.Second.ErrorDb), Near));
    }

    [Fact]
    public void NamedBandsOfAllCampaignsAreComparedOnce()
    {
        NamedBand receiver = new("receiver", Megahertz(320, 580)), low = new("low", Megahertz(40, 90));
        LotHistory found =
            LotHistoryComparer.Of([Lots(Spring, "1", receiver), Lots(Autumn, "2", receiver, low)], new LotQuestion());
        Assert.Equal(["receiver", "low"], found.Bands.Select(b => b.Name));
        Assert.Empty(found.BandsLeftOut);
        HistoryPair b = found.Bands[0].Pairs.Single(p => p.First.Label == "1: B" && p.Second.Label == "2: B");
        Assert.InRange(b.Tested!.Difference, 3, 5);
        Assert.Equal(b.First.Figures.MeanDb - b.Second.Figures.MeanDb, b.Tested.Difference, 1e-9);
        Assert.True(b.Adjusted < 0.05);
        Assert.All(found.Bands.SelectMany(x => x.Pairs.Zip(found.Pairs)),
            p => Assert.True(p.First.Adjusted >= p.Second.Adjusted));
        Assert.All(found.Bands[1].Pairs, p => Assert.True(p.Adjusted > 0.05));
        Assert.InRange(found.Bands[0].Band.Start.Value, 320e6, 332e6);
    }

    [Fact]
    public void ABandOfOtherLimitsOrOfNoFrequencyIsLeftOutAndNamed()
    {
        LotHistory found = LotHistoryComparer.Of(
            [Lots(Spring, "1", new NamedBand("FM", Megahertz(88, 108))),
                Lots(Autumn, "2", new NamedBand("FM", Megahertz(87, 108)), new NamedBand("far", Megahertz(2000, 3000)))],
            new LotQuestion());
        Assert.Empty(found.Bands);
        Assert.Equal([("FM", true), ("far", false)], found.BandsLeftOut.Select(b => (b.Name, b.LimitsDiffer)));
        Assert.Equal([Megahertz(88, 108), Megahertz(87, 108)], found.BandsLeftOut[0].Of.Select(c => c.Limits));
    }

    [Fact]
    public void WhereSpecimensAreCappedThePairsAreNotComparedAndTheGapIsCounted()
    {
        RehearsalPlan capped = Plan with { ShieldingStartDb = 40, ShieldingStopDb = 85 };
        LotHistory found =
            Of(Rehearser.Draw(capped with { Seed = 5 }).Campaign, Rehearser.Draw(capped with { Seed = 6 }).Campaign);
        HistoryPair pair = Pair(found, "A");
        Assert.InRange(pair.Points.Count(p => p.Hidden), 20, 60);
        Assert.All(pair.Points, p => Assert.Equal(p.Hidden, p.Probability is null));
        Assert.All(found.Frequencies.Zip(pair.Points).Where(p => p.Second.Hidden), p => Assert.True(p.First.Value > 200e6));
    }

    private static FrequencyBand Megahertz(double start, double stop) => new(new Hertz(start * 1e6), new Hertz(stop * 1e6));

    private static HistoryPair Pair(LotHistory history, string lot) =>
        history.Pairs.Single(p => !p.IsWithinACampaign && p.First.Figures.Lot == lot && p.Second.Figures.Lot == lot);

    private static bool Near((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9;

    private static CampaignLots Lots(Campaign campaign, string label, params ImmutableArray<NamedBand> bands)
    {
        AnalysisResult result = Analysis.Run(campaign, new AnalysisPlan { Averaging = Plan.Averaging });
        return new CampaignLots(label, result.Campaign, result.Curves) { NamedBands = bands };
    }

    private static LotHistory Of(params Campaign[] campaigns) =>
        LotHistoryComparer.Of([.. campaigns.Select((c, i) => Lots(c, $"{i + 1}"))], new LotQuestion());
}
