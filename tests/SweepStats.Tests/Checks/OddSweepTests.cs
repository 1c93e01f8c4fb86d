using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class OddSweepTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { SweepDeviationDb = 0.1 };

    [Theory]
    [InlineData(SweepRole.Reference)]
    [InlineData(SweepRole.Covered)]
    [InlineData(SweepRole.Floor)]
    public void OneSweepTwoDecibelsOffAmongFiveIsFoundAndNamed(SweepRole role)
    {
        int found = Enumerable.Range(1, 60).Count(seed => Odd(Plan with { Seed = (ulong)seed }, role, (_, level) => level - 2) is [{ } only]
            && only.Role == role && only.Message.Contains("below the other 4", StringComparison.Ordinal) && only.Size!.Value.Value is > 1.5 and < 2.6);
        // 95 of 100 are asked for; 54 of 60 leave 1.8 binomial deviations below.
        Assert.InRange(found, 54, 60);
    }

    [Fact]
    public void ASweepOfAnotherShapeIsFoundThoughItsMeanIsRight()
    {
        int found = Enumerable.Range(1, 60).Count(seed => Odd(Plan with { Seed = (ulong)seed }, SweepRole.Covered, (f, level) => level + (1.5 * Math.Sin(f / 3.0))) is [{ } only]
            && only.Message.Contains("another shape", StringComparison.Ordinal) && only.Size!.Value.Value is > 0.9 and < 1.3);
        Assert.InRange(found, 54, 60);
    }

    [Theory]
    [InlineData(5, 0.1)]
    [InlineData(5, 0.5)]
    [InlineData(10, 0.5)]
    [InlineData(20, 0.5)]
    public void SweepsThatScatterAllAlikeAreLeftAlone(int sweeps, double deviation)
    {
        int alarms = Enumerable.Range(1, 100).Count(seed => Rehearsed.Analysed(Plan with { Seed = (ulong)seed, SweepDeviationDb = deviation, FloorSweeps = sweeps, ReferenceSweeps = sweeps, CoveredSweeps = sweeps })
            .Findings.Any(f => f.Code == "odd-sweep"));
        // 2 of 100 are allowed for; 6 lie 2.9 binomial deviations above.
        Assert.InRange(alarms, 0, 6);
    }

    [Fact]
    public void OneOfThreeSweepsOfAPlacementIsToldWhereManyOthersShowTheScatter()
    {
        RehearsalPlan hung = Plan with { SpecimensPerLot = 3, Placements = 3, CoveredSweeps = 3, PlacementDeviationDb = 0.4 };
        int found = Enumerable.Range(1, 40).Count(seed =>
            Odd(Rehearser.Draw(hung with { Seed = (ulong)seed, OddSweeps = [new SweepStats.Rehearsal.OddSweep(SweepRole.Covered, 4, 2)] }).Campaign) is [{ Role: SweepRole.Covered } only]
            && only.Sweep!.Contains("A01/p2", StringComparison.Ordinal));
        Assert.InRange(found, 38, 40);
        Assert.Equal(0, Enumerable.Range(1, 40).Count(seed => Odd(Rehearser.Draw(hung with { Seed = (ulong)seed }).Campaign).Length > 0));
    }

    [Fact]
    public void ThreePlacementsBesideASteadyReferenceAreNotOdd()
    {
        RehearsalPlan swept = Plan with { Placements = 3, CoveredSweeps = 1, PlacementDeviationDb = 1, ReferenceSweeps = 20 };
        Assert.Equal(0, Enumerable.Range(1, 60).Count(seed => Odd(Rehearser.Draw(swept with { Seed = (ulong)seed }).Campaign).Length > 0));
    }

    [Fact]
    public void SweepsOfSingleLooksAreLeftAlone()
    {
        RehearsalPlan noisy = Plan with { Averaging = Averaging.Sample, Looks = 1, FloorSweeps = 10, ReferenceSweeps = 10, CoveredSweeps = 10, ShieldingStopDb = 60 };
        int alarms = Enumerable.Range(1, 100).Count(seed => Rehearsed.Analysed(noisy with { Seed = (ulong)seed }).Findings.Any(f => f.Code == "odd-sweep"));
        // Two families of 2 % each; 10 of 100 lie 3 binomial deviations above.
        Assert.InRange(alarms, 0, 10);
    }

    [Fact]
    public void OfFourSweepsNoneCanBeToldOdd() =>
        Assert.Empty(Odd(Plan with { ReferenceSweeps = 4 }, SweepRole.Reference, (_, level) => level - 2));

    [Theory]
    [InlineData(5, 5, null)]
    [InlineData(5, 3, "no five covered sweeps of one placement repeat each other, nor three among many others; reference sweeps were looked at")]
    [InlineData(3, 5, "no five reference sweeps repeat each other; covered sweeps were looked at")]
    [InlineData(3, 3, "no five reference or covered sweeps of one placement repeat each other; floor sweeps were looked at")]
    public void WhatWasNotLookedAtIsSaid(int reference, int covered, string? reason) =>
        Assert.Equal(reason, Rehearsed.Analysed(Plan with { ReferenceSweeps = reference, CoveredSweeps = covered }).Checks.Single(c => c.Code == "odd-sweep").UntestedBecause);

    [Fact]
    public void TheOddSweepExcludedTheFindingIsGone()
    {
        Campaign campaign = Drawn(Plan, SweepRole.Reference, (_, level) => level - 2);
        Campaign without = campaign with { Sweeps = [.. campaign.Sweeps.Where(s => s.Role != SweepRole.Reference), .. campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Skip(1)] };
        Assert.NotEmpty(Odd(campaign));
        Assert.Empty(Odd(without));
    }

    private static Finding[] Odd(RehearsalPlan plan, SweepRole role, Func<int, double, double> change) => Odd(Drawn(plan, role, change));

    private static Finding[] Odd(Campaign campaign) => [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Findings.Where(f => f.Code == "odd-sweep")];

    private static Campaign Drawn(RehearsalPlan plan, SweepRole role, Func<int, double, double> change)
    {
        Campaign campaign = Rehearser.Draw(plan).Campaign;
        Sweep first = campaign.Sweeps.First(s => s.Role == role);
        return Rehearsed.Changed(campaign, (s, f, level) => s.Name == first.Name ? change(f, level) : level);
    }
}
